package tautlog.desk.importing;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import tautlog.quantity.ForceUnit;
import tautlog.rig.Rig;

/**
 * What to import, and how to read it.
 *
 * @param time name or number (from 1) of the column of times
 * @param force the same for the forces
 * @param unit of the forces
 * @param rateHertz the nominal rate; empty: from the median spacing
 * @param zone of times without one
 * @param start the instant of second 0, for a column of plain seconds
 * @param rigToml text of the rig, stored with the readings
 * @param folder where the recording goes
 * @param program name and version of this program
 */
public record ImportRequest(
        Path readings,
        String time,
        String force,
        ForceUnit unit,
        Optional<BigDecimal> rateHertz,
        ZoneId zone,
        Optional<Instant> start,
        Rig rig,
        String rigToml,
        Path folder,
        String program) {}

package tautlog.logger.calibrate;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Locale;

/** The table that {@code tautlog calibrate} reads, a row a reading; never one that was there before. */
public final class ReadingsFile {
    private static final String HEAD = "load,unit,counts,direction,run,time,sd_counts,n\n";

    private final Path file;

    private ReadingsFile(Path file) {
        this.file = file;
    }

    /** @throws IOException if the file is there, or cannot be made */
    public static ReadingsFile create(Path file) throws IOException {
        try {
            Files.writeString(file, HEAD, StandardOpenOption.CREATE_NEW);
        } catch (FileAlreadyExistsException there) {
            throw new IOException(file + " is there already and is not overwritten: give another name with -o", there);
        }
        return new ReadingsFile(file);
    }

    /** Adds a row; it is on the disk's way when this returns. */
    public void add(TypedLine.Load load, SteadyMean mean, Instant at) throws IOException {
        add(load, load.direction(), mean, at);
    }

    /** Adds the row of the shunt resistor, switched on under {@code load}. */
    public void addShunt(TypedLine.Load load, SteadyMean mean, Instant at) throws IOException {
        add(load, "shunt", mean, at);
    }

    private void add(TypedLine.Load load, String direction, SteadyMean mean, Instant at) throws IOException {
        String row = String.format(
                Locale.ROOT,
                "%s,%s,%.3f,%s,%s,%s,%.3f,%d%n",
                load.load(),
                load.unit().symbol(),
                mean.mean(),
                direction,
                load.run(),
                at.truncatedTo(ChronoUnit.SECONDS),
                mean.sd(),
                mean.samples());
        Files.writeString(file, row, StandardOpenOption.APPEND);
    }
}

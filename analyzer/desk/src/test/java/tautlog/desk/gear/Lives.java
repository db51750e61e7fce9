package tautlog.desk.gear;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tautlog.rig.Band;
import tautlog.rig.Gear;
import tautlog.rig.GearKind;
import tautlog.rig.RopeMake;
import tautlog.service.Act;
import tautlog.service.Entry;
import tautlog.service.GearPiece;
import tautlog.service.Verdict;
import tautlog.usage.DrivelineUse;
import tautlog.usage.GearEvent;
import tautlog.usage.GearUse;
import tautlog.usage.Greatest;
import tautlog.usage.MachineUse;
import tautlog.usage.TimeSum;

/** One winch with a choker, or several, overloaded at chosen times; what the ledger says of it. */
final class Lives {
    static final Instant MORNING = Instant.parse("2026-05-04T07:00:00Z");

    private final List<GearOuting> outings = new ArrayList<>();
    private final List<Entry> entries = new ArrayList<>();
    private int count = 1;
    private Optional<java.time.LocalDate> fitted = Optional.empty();

    Lives pieces(int howMany) {
        count = howMany;
        return this;
    }

    Lives fittedByRig(String day) {
        fitted = Optional.of(java.time.LocalDate.parse(day));
        return this;
    }

    /** An outing of an hour with one overload at its beginning, {@code hours} after the first morning. */
    Lives overload(int hours, Band band) {
        return outing(hours, event(band, Optional.of(at(hours)), false));
    }

    Lives mayBe(int hours) {
        return outing(hours, event(Band.PAST_WLL, Optional.of(at(hours)), true));
    }

    /** An overload of an outing without a clock. */
    Lives undated(Optional<Instant> notAfter) {
        GearUse use = use(event(Band.PAST_WLL, Optional.empty(), false));
        outings.add(new GearOuting("upper", Optional.empty(), Optional.empty(), notAfter, machine(use)));
        return this;
    }

    private Lives outing(int hours, GearEvent event) {
        outings.add(new GearOuting("upper", Optional.of(at(hours)), Optional.of(at(hours + 1)), machine(use(event))));
        return this;
    }

    private static MachineUse machine(GearUse use) {
        return new MachineUse(List.of(use), List.of(), DrivelineUse.NONE);
    }

    private static GearUse use(GearEvent event) {
        return new GearUse(
                "choker",
                1,
                0,
                0,
                event.onlyMayBe() ? Map.of() : Map.of(event.band(), 1L),
                new Greatest(true, event.loadNewtons(), false),
                new Greatest(true, event.share(), false),
                false,
                TimeSum.of(360_000, 100_000),
                List.of(TimeSum.ZERO, TimeSum.ZERO, TimeSum.ZERO, TimeSum.ZERO),
                false,
                List.of(event));
    }

    private static GearEvent event(Band band, Optional<Instant> at, boolean mayBe) {
        long micros = at.map(time -> time.toEpochMilli() * 1_000).orElse(0L);
        return new GearEvent(
                7, at.isPresent(), micros, "straight", false, band, mayBe, 20_000, 16_000, 1.25, true, false);
    }

    static Instant at(int hours) {
        return MORNING.plusSeconds(hours * 3_600L);
    }

    Lives entry(int hours, String by, Act act) {
        entries.add(new Entry(
                "id" + entries.size(),
                at(hours),
                at(hours),
                by.isEmpty() ? Optional.empty() : Optional.of(by),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                act));
        return this;
    }

    Lives inspected(int hours, String by, String piece, Verdict verdict, String... damage) {
        return entry(hours, by, new Act.Inspected(piece(piece), verdict, Map.of(), Arrays.asList(damage)));
    }

    static GearPiece piece(String name) {
        return new GearPiece("choker", name.isEmpty() ? Optional.empty() : Optional.of(name));
    }

    GearLives.OfWinch winch() {
        Gear choker = new Gear(
                "choker",
                GearKind.ROPE,
                count,
                "rope",
                Optional.empty(),
                fitted,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(new RopeMake(Optional.of(new BigDecimal("11")), Optional.of("6x36 IWRC"))));
        return GearLives.of(
                new GearOfWinch("upper", List.of(choker), Optional.empty()), outings, entries, ZoneOffset.UTC);
    }

    GearLife life() {
        return winch().lives().get(0);
    }

    /** {@code red out-of-service, 5 nothing-known-against-it}. */
    String standings() {
        return String.join(
                ", ",
                life().pieces().stream()
                        .map(piece -> piece.name().orElse(String.valueOf(piece.count())) + " "
                                + piece.standing().word())
                        .toList());
    }
}

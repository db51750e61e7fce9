package tautlog.logger.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import tautlog.detect.Finding;
import tautlog.detect.Finding.ShaftAfterDrop;
import tautlog.detect.Finding.StallEnd;
import tautlog.detect.Finding.TroubleKind;
import tautlog.detect.Known;
import tautlog.rig.Hookup;
import tautlog.rig.LoadedItem;

/**
 * What the detectors say of a simulated world, against what that world did.
 *
 * <p>The truth comes from forces and places; nothing in it knows {@code FINDINGS.md}. Where a true event is no finding by
 * that page, the page's own threshold is the only reason accepted here. Thresholds: {@code samples/rig.toml} has R = 40 kN
 * and no {@code [detect]}, so shock_from is 6 kN, jolt_rise 8 kN, drop_from 4 kN.
 */
final class DetectorsAgainstWorldTest {
    private static final double SHOCK_FROM = 6_000;
    private static final double JOLT_RISE = 8_000;
    private static final double JOLT_WITHIN_SECONDS = 0.2;
    private static final double DROP_FROM = 4_000;
    private static final double SLACK_FOR_SECONDS = 0.1;
    /** Of a force: gain 0.1 %, amplifier of 0.8 ms and two milliseconds between samples on the fastest peak. */
    private static final double FORCE_SHARE = 0.01;
    /** Noise of 2 N (five times), drift of 5 N/K over 9 K. */
    private static final double FORCE_NEWTONS = 60;

    private static final Map<Scenario, JudgedRun> RUNS = new EnumMap<>(Scenario.class);

    private static JudgedRun run(Scenario scenario) {
        return RUNS.computeIfAbsent(scenario, s -> JudgedRun.of(s, 1));
    }

    private static double tolerance(double newtons) {
        return FORCE_SHARE * newtons + FORCE_NEWTONS;
    }

    private static boolean overlaps(long from, long to, Truth.Moment start, Truth.Moment end, long margin) {
        return from <= end.sample() + margin && to >= start.sample() - margin;
    }

    private static JudgedOuting outing(JudgedRun run, Truth.Moment at) {
        return run.outing(at.boot());
    }

    /** A snap is a shock when FINDINGS.md lets it be one: from 6 kN, slack for 0.1 s, twice what the line settles at. */
    @Test
    void everySnapIsAShockOrTheDefinitionSaysWhyNot() {
        int shocks = 0;
        for (Scenario scenario : Scenario.values()) {
            JudgedRun run = run(scenario);
            for (Truth.Snap snap : run.truth.snaps()) {
                boolean found = outing(run, snap.peakAt())
                        .of(Finding.Shock.class)
                        .anyMatch(shock ->
                                Math.abs(shock.peakNumber() - snap.peakAt().sample()) <= 3);
                shocks += found ? 1 : 0;
                assertTrue(found || isNoShock(run, snap), () -> scenario.id() + " missed " + snap);
            }
        }
        assertTrue(shocks >= 4, "shocks found: " + shocks);
    }

    private static boolean isNoShock(JudgedRun run, Truth.Snap snap) {
        JudgedOuting outing = outing(run, snap.peakAt());
        long p = snap.peakAt().sample();
        double settled = outing.medianNewtons(p + outing.samplesIn(0.5), p + outing.samplesIn(1.5));
        return snap.peakN() < SHOCK_FROM + tolerance(SHOCK_FROM)
                || snap.slackS() < SLACK_FOR_SECONDS + 0.02
                || snap.peakN() < 2 * settled + tolerance(snap.peakN());
    }

    /** A contact that raises the tension by less than 8 kN, or never by that much within 0.2 s, is no jolt by definition. */
    @Test
    void everyHardBlowOfAStumpIsAJolt() {
        int hard = 0;
        for (Scenario scenario : Scenario.values()) {
            JudgedRun run = run(scenario);
            for (Truth.StumpContact blow : run.truth.stumpContacts()) {
                JudgedOuting outing = outing(run, blow.start());
                double rise = outing.greatestRiseNewtons(
                        blow.start().sample(), blow.end().sample(), outing.samplesIn(JOLT_WITHIN_SECONDS));
                if (rise < JOLT_RISE) {
                    continue;
                }
                hard++;
                assertTrue(
                        outing.of(Finding.Jolt.class).anyMatch(j -> isAt(j, blow, outing)),
                        () -> scenario.id() + " missed " + blow);
            }
        }
        assertTrue(hard >= 4, "hard blows: " + hard);
    }

    private static boolean isAt(Finding.Jolt jolt, Truth.StumpContact blow, JudgedOuting outing) {
        return overlaps(jolt.startNumber(), jolt.peakNumber(), blow.start(), blow.end(), outing.samplesIn(0.1));
    }

    @Test
    void everyJoltHasAStumpOrASnapForItsCause() {
        for (Scenario scenario : Scenario.values()) {
            JudgedRun run = run(scenario);
            for (JudgedOuting outing : run.outings) {
                for (Finding.Jolt jolt : outing.all(Finding.Jolt.class)) {
                    boolean stump = run.truth.stumpContacts().stream().anyMatch(blow -> isAt(jolt, blow, outing));
                    boolean snap = run.truth.snaps().stream()
                            .anyMatch(s -> overlaps(jolt.startNumber(), jolt.peakNumber(), s.taut(), s.peakAt(), 5));
                    assertTrue(stump || snap, () -> scenario.id() + " false alarm " + jolt);
                }
            }
        }
    }

    /** The only false shock is the reading that ignition noise spoilt; it says itself that it is one sample. */
    @Test
    void everyShockIsATrueSnapButForOneSpoiltReading() {
        List<Finding.Shock> others = new ArrayList<>();
        for (Scenario scenario : Scenario.values()) {
            JudgedRun run = run(scenario);
            for (JudgedOuting outing : run.outings) {
                outing.of(Finding.Shock.class)
                        .filter(shock -> run.truth.snaps().stream()
                                .noneMatch(s -> Math.abs(s.peakAt().sample() - shock.peakNumber()) <= 3))
                        .forEach(others::add);
            }
        }
        JudgedRun afternoon = run(Scenario.AFTERNOON);
        long spike =
                faults(afternoon, "spike").findFirst().orElseThrow().start().sample();
        assertEquals(
                List.of(spike), others.stream().map(Finding.Shock::peakNumber).toList());
        assertEquals(1, others.get(0).peakNumber() - others.get(0).startNumber(), "one sample's rise");
        assertEquals(
                List.of(spike),
                afternoon
                        .outing(0)
                        .of(Finding.Trouble.class)
                        .filter(t -> t.trouble() == TroubleKind.ONE_SAMPLE_PEAK)
                        .map(Finding.Trouble::startNumber)
                        .toList());
    }

    private static Stream<Truth.Fault> faults(JudgedRun run, String kind) {
        return run.truth.faults().stream().filter(fault -> fault.kind().equals(kind));
    }

    @Test
    void thePartThatBrokeIsADropAfterWhichTheShaftRanUp() {
        JudgedRun run = run(Scenario.PARTING);
        Truth.LetGo broken = run.truth.letGo().get(0);
        Finding.Drop drop = run.outing(0)
                .of(Finding.Drop.class)
                .filter(d -> Math.abs(d.startNumber() - broken.at().sample()) <= 3)
                .findFirst()
                .orElseThrow();
        assertEquals(broken.tensionN(), run.outing(0).newtons(drop.before()), tolerance(broken.tensionN()));
        assertEquals(ShaftAfterDrop.RAN_UP, drop.shaft());
        assertEquals(Known.YES, drop.staysSlack());
        assertEquals(Known.YES, drop.clutch());
    }

    /** The choker that slides off in the afternoon does so below 4 kN: no drop by definition. */
    @Test
    void whatLetGoAboveTheDropsThresholdIsADrop() {
        for (Scenario scenario : Scenario.values()) {
            JudgedRun run = run(scenario);
            for (Truth.LetGo gone : run.truth.letGo()) {
                boolean found = outing(run, gone.at())
                        .of(Finding.Drop.class)
                        .anyMatch(d -> Math.abs(d.startNumber() - gone.at().sample()) <= 3);
                assertEquals(gone.tensionN() >= DROP_FROM, found, () -> scenario.id() + " " + gone);
            }
        }
    }

    /**
     * Hauls in which cable or noise spoilt the reading are left out. A snap after which the line is slack again within 0.3 s
     * is a shock but no pull by definition; nor is one a choker that slid off before the line had been above 1,500 N for 0.3 s
     * (the log did not move).
     */
    @Test
    void theGreatestTensionOfEveryHaulIsTheTrueOne() {
        int compared = 0;
        for (Scenario scenario : Scenario.values()) {
            JudgedRun run = run(scenario);
            for (Truth.Haul haul : run.truth.hauls()) {
                if (haul.start().boot() != haul.end().boot() || isSpoilt(run, haul) || haul.movedM() < 0.1) {
                    continue;
                }
                JudgedOuting outing = outing(run, haul.start());
                double found = Math.max(greatestOfPulls(outing, haul), greatestOfShocks(outing, haul));
                assertEquals(haul.peakN(), found, tolerance(haul.peakN()), () -> scenario.id() + " " + haul);
                compared++;
            }
        }
        assertTrue(compared >= 45, "compared " + compared);
    }

    private static double greatestOfPulls(JudgedOuting outing, Truth.Haul haul) {
        return outing.of(Finding.Pull.class)
                .filter(p -> overlaps(p.startNumber(), p.endNumber(), haul.start(), haul.end(), 0))
                .mapToDouble(p -> outing.newtons(p.peak()))
                .max()
                .orElse(0);
    }

    private static double greatestOfShocks(JudgedOuting outing, Truth.Haul haul) {
        return outing.of(Finding.Shock.class)
                .filter(s -> overlaps(s.peakNumber(), s.peakNumber(), haul.start(), haul.end(), 0))
                .mapToDouble(s -> outing.newtons(s.peak()))
                .max()
                .orElse(0);
    }

    private static boolean isSpoilt(JudgedRun run, Truth.Haul haul) {
        return run.truth.faults().stream()
                .filter(f -> !f.kind().equals("restart"))
                .anyMatch(
                        f -> overlaps(f.start().sample(), f.end().sample() + f.amount(), haul.start(), haul.end(), 0));
    }

    @Test
    void aHaulIsAnOverloadWhenAPartWasReallyOverloadedAndOnlyThen() {
        int over = 0;
        for (Scenario scenario : Scenario.values()) {
            JudgedRun run = run(scenario);
            for (Truth.Haul haul : run.truth.hauls()) {
                double limit = hookup(run, haul.hookup()).limit().newtons().doubleValue();
                boolean isSure = Math.abs(haul.peakN() - limit) > tolerance(limit);
                if (!isSure || haul.start().boot() != haul.end().boot() || isSpoilt(run, haul)) {
                    continue;
                }
                long found = outing(run, haul.start())
                        .of(Finding.Overload.class)
                        .filter(o -> overlaps(o.startNumber(), o.endNumber(), haul.start(), haul.end(), 0))
                        .peek(o -> assertEquals(haul.hookup(), o.hookup()))
                        .count();
                assertEquals(haul.peakN() > limit, found > 0, () -> scenario.id() + " " + haul);
                over += found > 0 ? 1 : 0;
            }
        }
        assertTrue(over >= 8, "overloaded hauls " + over);
    }

    private static Hookup hookup(JudgedRun run, String id) {
        return run.setup().rig().hookup(id).orElseThrow();
    }

    @Test
    void theRedirectsStrapIsFoundOverloadedWithItsTrueLoad() {
        JudgedRun run = run(Scenario.REDIRECT);
        Truth.Haul heavy = run.truth.hauls().get(1);
        LoadedItem strap = hookup(run, "round-the-corner").items().stream()
                .filter(item -> item.gear().equals("strap-1"))
                .findFirst()
                .orElseThrow();
        double tension = run.outing(0)
                .of(Finding.Overload.class)
                .mapToDouble(o -> run.outing(0).newtons(o.peak()))
                .max()
                .orElseThrow();
        double load = strap.multiple().doubleValue() * tension;
        double truly = heavy.loadsN().get("strap-1");
        assertEquals(truly, load, tolerance(truly));
        assertTrue(load > strap.allowedNewtons().doubleValue());
        assertTrue(run.outing(0)
                .of(Finding.Overload.class)
                .allMatch(o -> o.startNumber() > heavy.start().sample()));
    }

    @Test
    void openBridgesAreFoundFromTheFirstToTheLastSampleOfTheBrokenCable() {
        for (Scenario scenario : List.of(Scenario.CABLE_FAULT, Scenario.AFTERNOON)) {
            JudgedRun run = run(scenario);
            List<String> truly = faults(run, "open-bridge")
                    .map(f -> f.start().sample() + 1 + "-" + f.end().sample())
                    .toList();
            assertFalse(truly.isEmpty());
            assertEquals(truly, troubles(run.outing(0), TroubleKind.OPEN_BRIDGE));
        }
    }

    private static List<String> troubles(JudgedOuting outing, TroubleKind kind) {
        return outing.of(Finding.Trouble.class)
                .filter(t -> t.trouble() == kind)
                .map(t -> t.startNumber() + "-" + t.endNumber())
                .toList();
    }

    /** Only a gap of more than a second is trouble; a short one is in the numbers. */
    @Test
    void lostSamplesAreGapsWithTheirExactNumbers() {
        JudgedRun run = run(Scenario.AFTERNOON);
        List<Truth.Fault> lost = faults(run, "lost-samples").toList();
        List<String> gaps =
                lost.stream().map(f -> f.start().sample() + "+" + f.amount()).toList();
        assertTrue(run.outing(0).gaps.containsAll(gaps), () -> gaps + " in " + run.outing(0).gaps);
        List<String> longOnes = lost.stream()
                .filter(f -> f.amount() > 500)
                .map(f -> f.start().sample() - 1 + "-" + (f.start().sample() + f.amount()))
                .toList();
        assertEquals(1, longOnes.size());
        assertEquals(longOnes, troubles(run.outing(0), TroubleKind.GAP));
    }

    @Test
    void aRestartOfTheInstrumentIsAnotherOuting() {
        JudgedRun run = run(Scenario.BLACKOUT);
        assertEquals(
                run.truth.boots(), run.outings.stream().map(o -> o.instrument).toList());
        assertEquals(
                run.truth.samplesSent(),
                run.outings.stream().mapToLong(o -> o.samples).sum());
    }

    @Test
    void aStallIsFoundOnceWithItsEnd() {
        for (Scenario scenario : List.of(Scenario.STALL, Scenario.AFTERNOON)) {
            JudgedRun run = run(scenario);
            List<Finding.Stall> found = run.outing(0).all(Finding.Stall.class);
            List<Truth.Stall> truly = run.truth.stalls();
            assertEquals(truly.size(), found.size(), scenario.id());
            for (int i = 0; i < found.size(); i++) {
                long late = found.get(i).startNumber() - truly.get(i).start().sample();
                assertTrue(Math.abs(late) < run.outing(0).samplesIn(1), "off by " + late + " samples");
                assertEquals(truly.get(i).died(), found.get(i).ended() == StallEnd.STOPPED);
            }
        }
    }

    /** Each start and each stop is off by at most a second: until a first revolution, or the pulse that does not come. */
    @Test
    void theHourMeterReadsTheTrueTimeOfTheTurningShaft() {
        for (Scenario scenario : Scenario.values()) {
            JudgedRun run = run(scenario);
            double seconds = 3_600
                    * run.outings.stream()
                            .mapToDouble(o -> o.hours.shaftHours())
                            .sum();
            double unheard = faults(run, "restart")
                    .mapToDouble(f -> f.end().seconds() - f.start().seconds())
                    .sum();
            int changes = scenario == Scenario.AFTERNOON ? 12 : 4;
            assertEquals(run.truth.shaftTurningSeconds() - unheard, seconds, changes, scenario.id());
        }
    }

    @Test
    void whatIsSaidLiveIsFoundAgainInTheSameEvidence() {
        for (Scenario scenario : Scenario.values()) {
            for (JudgedOuting outing : run(scenario).outings) {
                assertEquals(outing.findings, outing.foundLater, scenario.id());
            }
        }
    }

    /** An ordinary afternoon: most hauls say nothing but that they were pulls. */
    @Test
    void mostHaulsOfAnOrdinaryAfternoonAreQuiet() {
        JudgedRun run = run(Scenario.AFTERNOON);
        long quiet = run.truth.hauls().stream().filter(h -> isQuiet(run, h)).count();
        assertTrue(quiet >= 25, "quiet hauls: " + quiet);
        assertTrue(run.outing(0).of(Finding.Jolt.class).count() <= 8);
        assertTrue(run.outing(0).of(Finding.Shock.class).count() <= 8);
        assertTrue(run.outing(0).of(Finding.Overload.class).count() <= 14);
        assertTrue(run.outing(0).of(Finding.Drop.class).count() <= 20);
    }

    private static boolean isQuiet(JudgedRun run, Truth.Haul haul) {
        return run.outing(0).findings.stream()
                .filter(f -> !(f instanceof Finding.Pull || f instanceof Finding.Trouble))
                .noneMatch(f -> f.startNumber() >= haul.start().sample()
                        && f.startNumber() <= haul.end().sample());
    }
}

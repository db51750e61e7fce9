package tautlog.logger.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.util.List;
import java.util.zip.CRC32C;
import org.junit.jupiter.api.Test;

/** Each scenario does what its name promises, by the truth of the physics and by what a decoder hears. */
final class SimulationTest {
    private final HeardFrames heard = new HeardFrames();

    private static long digest(Scenario scenario, long seed) {
        CRC32C crc = new CRC32C();
        Simulation.play(scenario, seed, (bytes, n, seconds) -> crc.update(bytes, 0, n));
        return crc.getValue();
    }

    private static double heardNewtons(int counts) {
        return (counts - 4_000) * 0.5;
    }

    @Test
    void theSameSeedGivesTheSameBytesAndAnotherSeedOthers() {
        assertEquals(digest(Scenario.STUMP, 5), digest(Scenario.STUMP, 5));
        assertNotEquals(digest(Scenario.STUMP, 5), digest(Scenario.STUMP, 6));
    }

    /** F = F0 + sqrt(F0² + k m v²) with the speed and stiffness of the moment; F0 is small beside it, friction helps a little. */
    @Test
    void slackSnapTakesUpAMovingLogAsTheEnergyFormulaSays() {
        Truth truth = Simulation.play(Scenario.SLACK_SNAP, 1, heard);
        Truth.Snap snap = truth.snaps().stream()
                .filter(s -> s.closingMPerS() > 1.2)
                .findFirst()
                .orElseThrow();
        double formula = snap.closingMPerS() * Math.sqrt(snap.stiffnessNPerM() * 900);
        assertEquals(formula, snap.peakN(), 0.15 * formula);
        assertTrue(snap.peakN() > 15_000);
        assertEquals(1, truth.marks().size());
        assertTrue(heard.inputs.stream().anyMatch(input -> (input & 1) == 1));
    }

    @Test
    void redirectOverloadsTheStrapButNotTheChoker() {
        Truth truth = Simulation.play(Scenario.REDIRECT, 1, heard);
        assertTrue(truth.hauls().get(0).loadsN().get("strap-1") < 20_000);
        Truth.Haul heavy = truth.hauls().get(1);
        assertEquals("round-the-corner", heavy.hookup());
        assertTrue(heavy.loadsN().get("strap-1") > 20_000, "strap " + heavy.loadsN());
        assertTrue(heavy.loadsN().get("choker") < 15_000, "choker " + heavy.loadsN());
        assertEquals(Math.sqrt(3), heavy.loadsN().get("strap-1") / heavy.peakN(), 1e-9); // 2 cos 30°
        assertTrue(heard.inputs.contains(2 << 8 | 2), "selector 2, clutch engaged");
    }

    @Test
    void stumpJerksTheLoadedLineAndHopsFree() {
        Truth truth = Simulation.play(Scenario.STUMP, 1, heard);
        assertEquals(2, truth.stumpContacts().size());
        for (Truth.StumpContact contact : truth.stumpContacts()) {
            assertTrue(contact.hopped());
            assertTrue(contact.tensionPeakN() - contact.tensionBeforeN() > 6_000);
            assertTrue(contact.end().seconds() - contact.start().seconds() < 0.3);
        }
    }

    @Test
    void partingBreaksTheWornChokerUnderALuggingEngineWhichThenRunsUp() {
        for (long seed = 1; seed <= 3; seed++) {
            HeardFrames frames = new HeardFrames();
            Truth truth = Simulation.play(Scenario.PARTING, seed, frames);
            Truth.LetGo broken = truth.letGo().get(0);
            double at = broken.at().seconds();
            assertEquals("thin-choker", broken.gear());
            assertEquals(24_000, broken.loadN(), 100);
            double before = frames.shaftRpm(at - 1, at);
            double after = frames.shaftRpm(at + 1, at + 2);
            assertTrue(after > 1.1 * before, "seed " + seed + ": " + before + " to " + after + " rpm");
        }
    }

    @Test
    void cableFaultFlagsExactlyTheSamplesTakenWhileTheCableWasBroken() {
        Truth truth = Simulation.play(Scenario.CABLE_FAULT, 1, heard);
        assertEquals(3, truth.faults().size());
        long open = truth.faults().stream()
                .mapToLong(f -> f.end().sample() - f.start().sample())
                .sum();
        assertEquals(open, heard.openSamples, 3); // the sample at each end
        assertEquals(List.of(), heard.gaps);
    }

    @Test
    void stallRecoversOnceAndKillsTheEngineOnce() {
        Truth truth = Simulation.play(Scenario.STALL, 1, heard);
        assertEquals(
                List.of(false, true),
                truth.stalls().stream().map(Truth.Stall::died).toList());
        Truth.Moment died = truth.stalls().get(1).end();
        assertEquals(0, heard.shaftRpm(died.seconds() + 6, died.seconds() + 8), 0.0);
    }

    @Test
    void blackoutStartsTheInstrumentAgainWithAnotherBoot() {
        Truth truth = Simulation.play(Scenario.BLACKOUT, 1, heard);
        assertEquals(truth.boots(), heard.boots);
        assertEquals(2, heard.boots.size());
        assertNotEquals(heard.boots.get(0).boot(), heard.boots.get(1).boot());
    }

    /** Amplifier, gain error (0.1 %), drift and noise lie between the true peak and the greatest count. */
    @Test
    void theGreatestCountIsTheTruePeakAsTheCellSeesIt() {
        for (Scenario scenario : List.of(Scenario.SLACK_SNAP, Scenario.STUMP, Scenario.REDIRECT, Scenario.STALL)) {
            HeardFrames frames = new HeardFrames();
            Truth truth = Simulation.play(scenario, 2, frames);
            double peak =
                    truth.hauls().stream().mapToDouble(Truth.Haul::peakN).max().orElseThrow();
            assertEquals(peak, heardNewtons(frames.greatest), 0.01 * peak, scenario.id());
            assertEquals(truth.samplesSent(), frames.samples);
            assertEquals(0, frames.endStops);
        }
    }

    @Test
    void anAfternoonHasOrdinaryPullsAndEveryKindOfSmallTrouble() {
        Truth truth = Simulation.play(Scenario.AFTERNOON, 1, heard);
        assertEquals(40, truth.hauls().size());
        assertTrue(truth.durationSeconds() > 2 * 3_600);
        assertTrue(truth.shaftTurningSeconds() < truth.durationSeconds() - 600, "pauses with the engine off");
        assertTrue(truth.snaps().stream().anyMatch(s -> s.closingMPerS() > 1), "a log that slid");
        assertTrue(truth.stumpContacts().stream().anyMatch(Truth.StumpContact::hopped));
        assertTrue(truth.letGo().stream().allMatch(l -> l.gear().isEmpty()), "nothing breaks");
        assertEquals(1, truth.letGo().size());
        assertEquals(1, truth.stalls().size());
        List<String> lost = truth.faults().stream()
                .filter(f -> f.kind().equals("lost-samples"))
                .map(f -> f.start().sample() + "+" + f.amount())
                .toList();
        assertTrue(heard.gaps.containsAll(lost), lost + " in " + heard.gaps);
        assertTrue(heard.rejected >= 10, "damaged frames, rejected: " + heard.rejected);
        assertTrue(heard.openSamples > 300);
    }

    @Test
    void theTruthIsJsonThatNamesItsUnits() {
        Truth truth = Simulation.play(Scenario.STUMP, 3, (bytes, n, seconds) -> {});
        JsonObject json = JsonParser.parseString(truth.toJson()).getAsJsonObject();
        assertEquals(1, json.get("schema").getAsInt());
        assertEquals("stump", json.get("scenario").getAsString());
        JsonObject contact = json.getAsJsonArray("stump_contacts").get(0).getAsJsonObject();
        assertEquals(
                truth.stumpContacts().get(0).tensionPeakN(),
                contact.get("tension_peak_n").getAsDouble(),
                0.001);
    }
}

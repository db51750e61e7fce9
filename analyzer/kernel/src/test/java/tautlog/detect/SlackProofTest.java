package tautlog.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tautlog.fixtures.Rigs;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Evidence;
import tautlog.sample.Instrument;
import tautlog.sample.ZeroSource;

/**
 * Section Zero of {@code FINDINGS.md} with its defaults: drift 200 N, 1 % of 40 kN is 400 N. 10 Hz, 1 N a count, frames of 10: 100
 * samples are the 10 s of a stretch, a pull needs 3 samples from 1500 N on and closes after 30 below 750 N.
 */
class SlackProofTest {
    private static final int FRAME = 10;

    private final List<String> moves = new ArrayList<>();
    private SlackProof proof = proof("0", "1");
    private long number;

    private static SlackProof proof(String zero, String factor) {
        return proof(Rigs.withLimit("40000", "20000"), zero, factor);
    }

    private static SlackProof proof(Rig rig, String zero, String factor) {
        Instrument instrument = new Instrument("TL-0001", 1, 0, 7, 1_000_000, 10_000, 8_388_607, 0);
        return new SlackProof(instrument, rig, Calibration.of(zero, factor));
    }

    private SlackProofTest hold(int counts, int samples) {
        return swing(counts, counts, samples);
    }

    /** Two counts by turns. */
    private SlackProofTest swing(int one, int other, int samples) {
        for (int k = 0; k < samples; k += FRAME) {
            int[] frame = new int[FRAME];
            for (int i = 0; i < FRAME; i++) {
                frame[i] = i % 2 == 0 ? one : other;
            }
            frame(0, frame);
        }
        return this;
    }

    private void frame(int flags, int[] counts) {
        proof.tension(number, 0, flags, counts, 0, counts.length);
        number += counts.length;
        proof.found().ifPresent(found -> moves.add(number + " " + found.shiftCounts() + " " + found.by()));
    }

    private SlackProofTest missing(int samples) {
        number += samples;
        return this;
    }

    private SlackProofTest button(int present, int state) {
        proof.input(number, 0, 0, present, state);
        return this;
    }

    /** 5 kN for 2 s and 8 s of slack: numbers 0 to 99. */
    private SlackProofTest pull() {
        return hold(5_000, 20).hold(0, 80);
    }

    @Test
    void provesNothingBeforeTheFirstPull() {
        hold(55, 1_000);
        assertEquals(List.of(), moves);
        assertFalse(proof.isProven());
    }

    @Test
    void isProvenByTenSecondsOfRestAfterAPull() {
        pull().hold(55, 100);
        assertEquals(List.of("200 55 SLACK"), moves);
        assertTrue(proof.isProven());
    }

    @Test
    void waitsUntilNoPullIsOpenEvenWhereTheBoundIsWide() {
        // given a drift setting of 1200 N: then 900 N could be taken for the zero, but they keep the pull open
        proof = proof(Rigs.parsed("""
                schema = 1
                [winch]
                name = "upper-landing"
                rated_pull = "40 kN"
                [detect]
                drift = "1200 N"
                [[gear]]
                id = "choker"
                kind = "chain"
                wll = "20 kN"
                [[hookup]]
                id = "straight"
                default = true
                items = [ { gear = "choker" } ]
                """), "0", "1");
        hold(5_000, 20).hold(900, 480);
        assertEquals(List.of(), moves);
        hold(700, 100);
        assertEquals(List.of("600 700 SLACK"), moves);
    }

    @Test
    void takesNoMeanBeyondTheDriftSettingAndKeepsWhatWas() {
        pull().hold(200, 100).hold(201, 200).hold(-200, 100).hold(-201, 100);
        assertEquals(List.of("200 200 SLACK", "500 -200 SLACK"), moves);
    }

    @Test
    void comparesTheMeanExactlyAndRoundsHalvesAway() {
        // 0.5 counts of zero and 2 N a count: the bound is 100.5 counts, the shift at most 100
        proof = proof("0.5", "2");
        hold(2_500, 20).hold(0, 80).swing(100, 101, 100);
        assertEquals(List.of("200 100 SLACK"), moves);
        swing(101, 101, 100);
        assertEquals(List.of("200 100 SLACK"), moves, "100.5 counts are 201 N");
        swing(-1, 0, 100);
        assertEquals("400 -1 SLACK", moves.get(1));
    }

    @Test
    void wantsTheLineAtRest() {
        pull().swing(-200, 200, 100).swing(-200, 201, 100);
        assertEquals(List.of("200 0 SLACK"), moves);
    }

    @Test
    void wantsEveryNumberOfTheStretch() {
        // given: one missing in the second stretch, an open bridge in the third
        pull().hold(55, 50).missing(1).hold(55, 50);
        hold(55, 50);
        frame(Evidence.FLAG_OPEN_BRIDGE, new int[FRAME]);
        hold(55, 90);
        assertEquals(List.of(), moves);
    }

    @Test
    void trustsNoPullThatAGapCutOff() {
        hold(5_000, 20).missing(30).hold(55, 1_000);
        assertEquals(List.of(), moves);
    }

    @Test
    void dropsWhatItFoundWhenTheNextPullBeginsInTheSameFrame() {
        // given a stretch that ends with number 199, in the middle of the frame 195 to 204
        frame(0, new int[5]);
        hold(5_000, 20).hold(0, 170);
        // when the load comes with 200
        frame(0, new int[] {0, 0, 0, 0, 0, 2_000, 2_000, 2_000, 2_000, 2_000});
        // then
        assertEquals(List.of(), moves);
        assertTrue(proof.isProven());
    }

    @Test
    void judgesTheOwnZeroWithTheShiftPutBack() {
        // given a shift of 150 that the counts have had taken off: 60 more would be 210
        pull();
        proof.zero(number, 150, ZeroSource.SLACK);
        hold(60, 100).hold(50, 100);
        assertEquals(List.of("300 200 SLACK"), moves);
    }

    @Test
    void takesAPersonsWordAfterThreeSecondsAlsoBeforeAnyPull() {
        button(1, 0).hold(55, 20).button(1, 1).hold(55, 20);
        assertEquals(List.of(), moves, "2 s");
        hold(55, 100);
        assertEquals(List.of("50 55 BUTTON"), moves, "once");
    }

    @Test
    void takesNoWordFromAButtonThatWasNeverSeenUp() {
        button(1, 1).hold(55, 200);
        assertEquals(List.of(), moves);
        button(1, 0).button(1, 1).hold(55, 30);
        assertEquals(List.of("230 55 BUTTON"), moves);
    }

    @Test
    void takesNoWordUnderLoadNorBeyondTheBoundNorAcrossAGap() {
        button(1, 0).button(1, 1).hold(2_000, 30);
        assertEquals(SlackProof.Hold.NOT_SLACK, proof.hold());
        hold(0, 50).button(1, 0).button(1, 1).hold(201, 30);
        assertEquals(SlackProof.Hold.NOT_SLACK, proof.hold());
        button(1, 0).button(1, 1).hold(0, 20).missing(1).hold(0, 50);
        button(0, 0).button(1, 1).hold(0, 20).button(1, 0).hold(0, 10);
        assertEquals(List.of(), moves);
    }
}

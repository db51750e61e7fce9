package tautlog.desk.gear;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import tautlog.rig.Band;
import tautlog.service.Act;
import tautlog.service.Verdict;

class GearLivesTest {
    @Test
    void staysOutUntilANamedPersonInspectedItAfterTheOverload() {
        assertEquals("1 out-of-service", new Lives().overload(0, Band.PAST_WLL).standings());
        assertEquals(
                "1 out-of-service",
                new Lives()
                        .overload(5, Band.PAST_WLL)
                        .inspected(4, "A. Reed", "", Verdict.BACK_IN_SERVICE)
                        .standings(),
                "inspected before");
        assertEquals(
                "1 out-of-service",
                new Lives()
                        .overload(5, Band.PAST_WLL)
                        .inspected(5, "A. Reed", "", Verdict.BACK_IN_SERVICE)
                        .standings(),
                "at the same instant");
        assertEquals(
                "1 out-of-service",
                new Lives()
                        .overload(5, Band.PAST_WLL)
                        .inspected(6, "", "", Verdict.BACK_IN_SERVICE)
                        .standings(),
                "nobody's name");
        assertEquals(
                "1 nothing-known-against-it",
                new Lives()
                        .overload(5, Band.PAST_WLL)
                        .inspected(6, "A. Reed", "", Verdict.BACK_IN_SERVICE)
                        .standings());
    }

    @Test
    void isOneInspectionHoweverManyOverloadsLedToIt() {
        Lives lives = new Lives()
                .overload(0, Band.PAST_WLL)
                .overload(2, Band.PAST_PROOF)
                .overload(4, Band.PAST_WLL);

        assertEquals(1, lives.life().out().count());
        assertEquals(3, lives.life().pieces().get(0).open().size());
        assertEquals(Optional.of(Band.PAST_PROOF), lives.life().pieces().get(0).worst());
        assertEquals(
                "1 nothing-known-against-it",
                lives.inspected(5, "A. Reed", "", Verdict.BACK_IN_SERVICE).standings());
    }

    @Test
    void stillKnowsAnOverloadBehindTheInspection() {
        Lives lives = new Lives()
                .overload(0, Band.PAST_PROOF)
                .inspected(1, "A. Reed", "", Verdict.BACK_IN_SERVICE)
                .overload(2, Band.PAST_WLL);

        assertEquals("1 out-of-service", lives.standings());
        assertEquals(Optional.of(Band.PAST_WLL), lives.life().pieces().get(0).worst());
        assertEquals(2, lives.life().loads().size());
    }

    @Test
    void doesWhatTheInspectionDecided() {
        Lives overloaded = new Lives().overload(0, Band.PAST_WLL);

        assertEquals(
                "1 out-of-service",
                overloaded.inspected(1, "A. Reed", "", Verdict.STAYS_OUT).standings());
        assertEquals(
                "1 scrap", overloaded.inspected(2, "A. Reed", "", Verdict.SCRAP).standings());
        assertEquals(
                "1 nothing-known-against-it",
                overloaded.entry(3, "B. Hale", new Act.Fitted(Lives.piece(""))).standings());
    }

    @Test
    void takesAPersonsWordWithoutAnOverload() {
        Lives lives = new Lives().entry(1, "", new Act.OutOfService(Lives.piece("")));

        assertEquals("1 out-of-service", lives.standings());
        assertTrue(lives.life().pieces().get(0).reasons().get(0).contains("4 May 2026"));
        assertEquals(
                "1 nothing-known-against-it",
                lives.inspected(2, "A. Reed", "", Verdict.BACK_IN_SERVICE).standings());
    }

    @Test
    void tellsIdenticalPiecesApartOnlyWhereTheCrewDid() {
        Lives six = new Lives().pieces(6).overload(0, Band.PAST_WLL);
        assertEquals("6 out-of-service", six.standings());

        six.inspected(1, "A. Reed", "Red", Verdict.BACK_IN_SERVICE);
        assertEquals("red nothing-known-against-it, 5 out-of-service", six.standings());

        six.entry(2, "A. Reed", new Act.Retired(Lives.piece("blue"))).overload(3, Band.PAST_WLL);
        assertEquals("blue retired, red out-of-service, 5 out-of-service", six.standings());

        six.inspected(4, "A. Reed", "", Verdict.BACK_IN_SERVICE);
        assertEquals("blue retired, red nothing-known-against-it, 5 nothing-known-against-it", six.standings());
    }

    @Test
    void knowsThatWhatWasRetiredWentOnWorking() {
        Lives lives = new Lives().overload(0, Band.PAST_WLL).entry(1, "", new Act.Retired(Lives.piece("")));

        assertEquals("1 retired", lives.standings());
        assertEquals("1 out-of-service", lives.overload(2, Band.PAST_WLL).standings());
    }

    @Test
    void isAnotherPieceFromTheDayTheRigNamesOn() {
        assertEquals(
                "1 nothing-known-against-it",
                new Lives().overload(0, Band.PAST_WLL).fittedByRig("2026-05-05").standings());
        assertEquals(
                "1 out-of-service",
                new Lives().overload(0, Band.PAST_WLL).fittedByRig("2026-05-04").standings(),
                "fitted on the day of the overload: nobody knows which came first");
        Lives later = new Lives()
                .overload(0, Band.PAST_WLL)
                .overload(48, Band.PAST_WLL)
                .fittedByRig("2026-05-05");
        assertEquals(1, later.life().since().pulls());
        assertEquals(2, later.life().recorded().pulls());
    }

    @Test
    void keepsOutWhatWasOverloadedAtAnUnknownTime() {
        assertEquals(
                "1 out-of-service",
                new Lives()
                        .undated(Optional.empty())
                        .inspected(90, "A. Reed", "", Verdict.BACK_IN_SERVICE)
                        .standings());
        assertEquals(
                "1 nothing-known-against-it",
                new Lives()
                        .undated(Optional.of(Lives.at(10)))
                        .inspected(90, "A. Reed", "", Verdict.BACK_IN_SERVICE)
                        .standings());
    }

    @Test
    void asksForALookAtWhatMayHaveBeenOverloaded() {
        assertEquals("1 inspect", new Lives().mayBe(0).standings());
        assertEquals(
                "1 nothing-known-against-it",
                new Lives()
                        .mayBe(0)
                        .inspected(1, "A. Reed", "", Verdict.BACK_IN_SERVICE)
                        .standings());
    }
}

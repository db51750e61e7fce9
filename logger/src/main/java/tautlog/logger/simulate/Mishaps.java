package tautlog.logger.simulate;

import java.util.List;
import tautlog.logger.simulate.physics.DraggedLog;
import tautlog.logger.simulate.physics.Ground;
import tautlog.logger.simulate.physics.Rigging;
import tautlog.logger.simulate.physics.Stump;

/** Short scenarios, each around one mishap, with an ordinary pull before it where it helps to see the difference. */
final class Mishaps {
    private static final double WORKING_RPM = 400;
    private static final double LOW_RPM = 260;
    private static final double LANDING_METRES = 5;

    private Mishaps() {}

    /** Damp forest floor: common practice, no source. */
    private static Ground floor(Crew crew, double slopeDegrees) {
        return new Ground(0.58, 0.55, slopeDegrees, 0, 0.12, crew.random().nextLong());
    }

    private static void choke(Crew crew, Rigging rigging, double kilograms, double metres, Stump... stumps) {
        crew.choke(rigging, new DraggedLog(kilograms, metres, floor(crew, 3), List.of(stumps)));
    }

    private static void begin(Crew crew) {
        crew.waitFor(12);
        crew.startEngine(WORKING_RPM);
    }

    private static void ordinaryPull(Crew crew, double kilograms, double metres) {
        choke(crew, Gear.straight(), kilograms, metres);
        crew.windTo(LANDING_METRES, 150);
        crew.unchoke();
    }

    private static void end(Crew crew) {
        crew.unchoke();
        crew.stopEngine();
    }

    /** Wet leaves in a steep gully: the log is wedged, the line was slackened to free it, then it goes. */
    static void slackSnap(Crew crew) {
        begin(crew);
        ordinaryPull(crew, 700, 22);
        breakLoose(crew, 900, 30);
        crew.pressMark();
        crew.windTo(LANDING_METRES, 150);
        end(crew);
    }

    /** Chokes a log that is wedged in a gully, pulls in vain, slackens, works it loose: it slides into the line. */
    static void breakLoose(Crew crew, double kilograms, double metres) {
        Ground gully = new Ground(0.30, 0.14, 25, 12, 0.05, crew.random().nextLong());
        DraggedLog log = new DraggedLog(kilograms, metres, gully, List.of());
        log.hold(40_000);
        crew.choke(Gear.straight(), log);
        crew.windUntil(() -> crew.world().tension() > 8_000, 20);
        crew.waitFor(3);
        crew.slacken(0.4);
        crew.waitFor(6);
        log.release();
        crew.waitFor(8);
    }

    /** First a log that the strap can bear, then one that it cannot, though the choker can. */
    static void redirect(Crew crew) {
        begin(crew);
        choke(crew, Gear.roundTheCorner(), 500, 32);
        crew.windTo(14, 120);
        crew.unchoke();
        choke(crew, Gear.roundTheCorner(), 1_500, 34);
        crew.windTo(14, 150);
        end(crew);
    }

    static void stump(Crew crew) {
        begin(crew);
        ordinaryPull(crew, 900, 20);
        choke(crew, Gear.straight(), 1_000, 30, new Stump(24, 8_000), new Stump(15, 10_500));
        crew.windTo(LANDING_METRES, 150);
        end(crew);
    }

    /** The engine has little to give and lugs under a heavy log; the butt meets a stump; the link is worn. */
    static void parting(Crew crew) {
        Rigging worn = Gear.thinChoker().withStrength("thin-choker", 24_000);
        begin(crew);
        crew.engine().setMaxTorque(175);
        ordinaryPull(crew, 600, 18);
        Ground climb = new Ground(0.61, 0.60, 8, 0, 0.02, crew.random().nextLong());
        Stump stump = new Stump(31.2, Double.POSITIVE_INFINITY);
        crew.choke(worn, new DraggedLog(2_560, 32.5, climb, List.of(stump)));
        crew.windTo(LANDING_METRES, 60);
        crew.waitFor(5);
        crew.pressMark();
        crew.waitFor(15);
        end(crew);
    }

    static void cableFault(Crew crew) {
        begin(crew);
        ordinaryPull(crew, 800, 20);
        choke(crew, Gear.straight(), 950, 28);
        crew.windTo(22, 60);
        crew.breakCable(() -> crew.windTo(19, 60));
        crew.windTo(16, 60);
        crew.breakCable(() -> crew.waitFor(0.1));
        crew.windTo(12, 60);
        crew.breakCable(() -> {
            crew.windTo(LANDING_METRES, 60);
            crew.waitFor(4);
        });
        end(crew);
    }

    /** At low throttle, with a tired engine: once the operator lets go in time and it recovers, once not. */
    static void stall(Crew crew) {
        begin(crew);
        ordinaryPull(crew, 800, 20);
        lugAgainstStump(crew, 1_300, 34);
        crew.slacken(0.8);
        crew.waitFor(4);
        crew.windUntil(() -> false, 60);
        crew.waitFor(10);
        crew.slacken(0.5);
        workRound(crew);
        crew.windTo(LANDING_METRES, 150);
        end(crew);
    }

    /** Winds at low throttle, with little torque to give, until the engine has lost four tenths of its speed. */
    static void lugAgainstStump(Crew crew, double kilograms, double metres) {
        crew.engine().setMaxTorque(150);
        crew.throttle(LOW_RPM);
        choke(crew, Gear.straight(), kilograms, metres, new Stump(metres - 5, Double.POSITIVE_INFINITY));
        crew.windUntil(() -> crew.engine().shaftRpm() < 0.6 * LOW_RPM, 60);
        crew.waitFor(6);
    }

    /** Gets the butt past the stump by hand and gives the engine its strength back. */
    static void workRound(Crew crew) {
        crew.world().log().ifPresent(DraggedLog::clearStump);
        crew.engine().setMaxTorque(Gear.ENGINE_TORQUE);
        crew.startEngine(WORKING_RPM);
    }

    static void blackout(Crew crew) {
        begin(crew);
        ordinaryPull(crew, 800, 20);
        choke(crew, Gear.straight(), 950, 28);
        crew.windTo(18, 60);
        crew.powerCut(2.5);
        crew.windTo(LANDING_METRES, 60);
        end(crew);
    }
}

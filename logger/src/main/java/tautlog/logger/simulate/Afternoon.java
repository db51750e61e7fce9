package tautlog.logger.simulate;

import java.util.ArrayList;
import java.util.List;
import tautlog.logger.simulate.physics.DraggedLog;
import tautlog.logger.simulate.physics.Ground;
import tautlog.logger.simulate.physics.Rigging;
import tautlog.logger.simulate.physics.Stump;

/** Three hours on a hillside of beech and spruce: some forty logs, and the trouble that such an afternoon brings. */
final class Afternoon {
    private static final int LOGS = 40;
    private static final int PAUSE_EVERY = 10;
    private static final double LANDING_METRES = 5;

    private Afternoon() {}

    static void play(Crew crew) {
        crew.waitFor(60);
        crew.startEngine(400);
        for (int i = 0; i < LOGS; i++) {
            crew.temperature(12 + 9 * Math.sin(Math.PI * i / LOGS));
            if (i % PAUSE_EVERY == PAUSE_EVERY - 1) {
                pause(crew);
            }
            log(crew, i);
            crew.waitFor(crew.between(20, 90));
        }
        crew.windInEmpty(4);
        crew.stopEngine();
        crew.waitFor(90);
    }

    private static void pause(Crew crew) {
        crew.stopEngine();
        crew.waitFor(crew.between(300, 600));
        crew.startEngine(crew.between(370, 430));
    }

    private static void log(Crew crew, int i) {
        boolean corner = i % 8 == 5 && i != 29; // a gully has no tree for a block
        double landing = corner ? 15 : LANDING_METRES;
        double metres = crew.between(landing + 10, 42);
        switch (i) {
            case 8, 29 -> Mishaps.breakLoose(crew, crew.between(600, 1_000), metres);
            case 35 -> {
                Mishaps.lugAgainstStump(crew, 1_200, metres);
                crew.slacken(0.6);
                Mishaps.workRound(crew);
            }
            default ->
                crew.choke(
                        rigging(i),
                        new DraggedLog(kilograms(crew, i), metres, ground(crew), stumps(crew, i, landing, metres)));
        }
        mishap(crew, i);
        crew.windTo((metres + landing) / 2, 90);
        if (i % 3 == 1) {
            crew.waitFor(crew.between(2, 15)); // a look at the log, the brake holds
        }
        crew.windTo(landing, 90);
        if (i % 8 == 7) {
            crew.unchokeInAHurry();
        } else {
            crew.unchoke();
        }
    }

    private static Rigging rigging(int i) {
        if (i == 17) {
            return Gear.thinChoker().slippingAt(3_600);
        }
        return i % 8 == 5 ? Gear.roundTheCorner() : i % 7 == 3 ? Gear.thinChoker() : Gear.straight();
    }

    private static double kilograms(Crew crew, int i) {
        if (i == 13 || i == 33) {
            return 2_500; // a whole stem, too much for the choker
        }
        if (i == 24) {
            return 1_450; // the thin choker was at hand
        }
        return i % 7 == 3 ? crew.between(350, 800) : crew.between(450, 1_500);
    }

    private static Ground ground(Crew crew) {
        double grip = crew.between(0.48, 0.66);
        return new Ground(
                grip + 0.03, grip, crew.between(-4, 9), 0, 0.12, crew.random().nextLong());
    }

    private static List<Stump> stumps(Crew crew, int i, double landing, double metres) {
        List<Stump> stumps = new ArrayList<>();
        if (i % 9 == 4) {
            stumps.add(new Stump(crew.between(landing + 2, metres - 3), crew.between(8_000, 17_000)));
        }
        return stumps;
    }

    private static void mishap(Crew crew, int i) {
        switch (i) {
            case 2 -> crew.disturbLine(3);
            case 6 -> crew.loseSamples(20);
            case 10 -> crew.loseBytes(2);
            case 15 -> crew.pressMark();
            case 20 -> crew.spike(12_000);
            case 22 -> crew.loseSamples(900);
            case 26 -> crew.disturbLine(8);
            case 31 -> crew.breakCable(() -> crew.waitFor(0.8));
            default -> {}
        }
    }
}

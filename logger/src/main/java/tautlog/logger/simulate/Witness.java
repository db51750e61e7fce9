package tautlog.logger.simulate;

import java.util.Map;
import java.util.function.DoubleFunction;
import org.jspecify.annotations.Nullable;
import tautlog.logger.simulate.Truth.Moment;
import tautlog.logger.simulate.physics.Engine;
import tautlog.logger.simulate.physics.Part;
import tautlog.logger.simulate.physics.Rigging;
import tautlog.logger.simulate.physics.Stump;
import tautlog.logger.simulate.physics.World;
import tautlog.logger.simulate.physics.WorldEvents;

/** Looks at the world after every step and writes down what it did. Knows nothing of counts, limits or detectors. */
final class Witness implements WorldEvents {
    /** A line that was slack for less only rattles. */
    private static final double SLACK_SECONDS = 0.05;
    /** After this the first peak of a snap is over in any case: half a period of a heavy log on a long line. */
    private static final double SNAP_SECONDS = 0.5;

    private static final double SNAP_NEWTONS = 1_000;
    private static final double STALL_SHARE = 0.75;
    private static final double RECOVERED_SHARE = 0.9;
    private static final double LOADED_NEWTONS = 1_000;
    private static final double TURNING_RPM = 60;

    private final Truth truth;
    private final DoubleFunction<Moment> moments;
    private double now;
    private double tension;
    private double shaftRpm;
    private double slackSince;
    private boolean hooked;
    private double haulStart;
    private double haulFrom;
    private double haulPeak;
    private double haulPeakAt;
    private double tautAt = -1;
    private double slackBefore;
    private double closing;
    private double stiffness;
    private double snapPeak;
    private double snapPeakAt;
    private @Nullable Stump stump;
    private double stumpAt;
    private double stumpSpeed;
    private double stumpTensionBefore;
    private double stumpTensionPeak;
    private double stumpPush;
    private double stallAt = -1;
    private double stallTension;
    private double stallLeast;
    private double stallSet;

    Witness(Truth truth, DoubleFunction<Moment> moments) {
        this.truth = truth;
        this.moments = moments;
    }

    void look(World world) {
        now = world.seconds();
        tension = world.tension();
        shaftRpm = world.engine().shaftRpm();
        watchTension(world);
        if (stump != null) {
            watchStump(world);
        }
        watchEngine(world);
        truth.shaftTurningS += shaftRpm >= TURNING_RPM ? world.lastStepSeconds() : 0;
        truth.clutchSlippingS += world.drum().isClutchOn() && !world.drum().isLocked() ? world.lastStepSeconds() : 0;
    }

    private void watchTension(World world) {
        if (tension > haulPeak) {
            haulPeak = tension;
            haulPeakAt = now;
        }
        if (tautAt >= 0) {
            watchSnap();
        }
        if (tension > 0 && slackSince >= 0) {
            if (hooked && now - slackSince >= SLACK_SECONDS) {
                openSnap(world);
            }
            slackSince = -1;
        } else if (tension == 0 && slackSince < 0) {
            slackSince = now;
        }
    }

    private void openSnap(World world) {
        if (tautAt >= 0) {
            closeSnap();
        }
        tautAt = now;
        slackBefore = now - slackSince;
        closing = world.closingSpeed();
        stiffness = world.lineStiffness();
        snapPeak = 0;
        snapPeakAt = now;
    }

    private void watchSnap() {
        if (tension > snapPeak) {
            snapPeak = tension;
            snapPeakAt = now;
        }
        if (tension < 0.9 * snapPeak || now - tautAt > SNAP_SECONDS) {
            closeSnap();
        }
    }

    private void closeSnap() {
        if (snapPeak >= SNAP_NEWTONS) {
            truth.snaps.add(new Truth.Snap(at(tautAt), slackBefore, closing, stiffness, snapPeak, at(snapPeakAt)));
        }
        tautAt = -1;
    }

    private void watchStump(World world) {
        stumpTensionPeak = Math.max(stumpTensionPeak, tension);
        double push = world.log().map(log -> log.stumpPush()).orElse(0.0);
        stumpPush = Math.max(stumpPush, push);
        if (push == 0) {
            leaveStump(false);
        }
    }

    private void leaveStump(boolean hopped) {
        truth.stumpContacts.add(new Truth.StumpContact(
                at(stumpAt), at(now), stumpSpeed, stumpTensionBefore, stumpTensionPeak, stumpPush, hopped));
        stump = null;
    }

    private void watchEngine(World world) {
        Engine engine = world.engine();
        if (stallAt < 0) {
            boolean lugs = engine.throttle() > 0.97 && shaftRpm < STALL_SHARE * engine.setRpm();
            if (lugs && !engine.isCranking() && engine.isRunning() && tension > LOADED_NEWTONS) {
                stallAt = now;
                stallTension = tension;
                stallLeast = shaftRpm;
                stallSet = engine.setRpm();
            }
            return;
        }
        stallLeast = Math.min(stallLeast, shaftRpm);
        if (!engine.isRunning() || shaftRpm >= RECOVERED_SHARE * stallSet) {
            endStall(!engine.isRunning());
        }
    }

    private void endStall(boolean died) {
        truth.stalls.add(new Truth.Stall(at(stallAt), at(now), stallSet, stallLeast, stallTension, died));
        stallAt = -1;
    }

    void hookedUp(World world) {
        hooked = true;
        haulStart = now;
        haulFrom = metres(world);
        haulPeak = 0;
        haulPeakAt = now;
        slackSince = now;
    }

    void unhooked(World world) {
        if (tautAt >= 0) {
            closeSnap();
        }
        if (stump != null) {
            leaveStump(false);
        }
        Map<String, Double> loads = Truth.noLoads();
        for (Part part : world.rigging().map(Rigging::parts).orElseThrow()) {
            loads.put(part.gear(), part.multiple() * haulPeak);
        }
        truth.hauls.add(new Truth.Haul(
                at(haulStart),
                at(now),
                world.rigging().map(Rigging::hookup).orElseThrow(),
                world.log().map(log -> log.mass()).orElseThrow(),
                haulPeak,
                at(haulPeakAt),
                haulFrom - metres(world),
                loads));
        hooked = false;
    }

    private static double metres(World world) {
        return world.log().map(log -> log.metres()).orElseThrow();
    }

    void over(World world) {
        if (hooked) {
            unhooked(world);
        }
        if (stallAt >= 0) {
            endStall(false);
        }
        truth.durationS = now;
    }

    private Moment at(double seconds) {
        return moments.apply(seconds);
    }

    @Override
    public void parted(Part part, double loadNewtons, double tensionNewtons) {
        truth.letGo.add(new Truth.LetGo(at(now), part.gear(), loadNewtons, tensionNewtons, shaftRpm));
    }

    @Override
    public void slipped(double tensionNewtons) {
        truth.letGo.add(new Truth.LetGo(at(now), "", tensionNewtons, tensionNewtons, shaftRpm));
    }

    @Override
    public void stumpMet(Stump met, double speed) {
        stump = met;
        stumpAt = now;
        stumpSpeed = speed;
        stumpTensionBefore = tension;
        stumpTensionPeak = tension;
        stumpPush = 0;
    }

    @Override
    public void stumpHopped(Stump hopped, double pushNewtons) {
        stumpPush = Math.max(stumpPush, pushNewtons);
        leaveStump(true);
    }
}

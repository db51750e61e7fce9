package tautlog.desk.report;

import java.math.BigDecimal;
import java.util.List;
import java.util.OptionalDouble;
import tautlog.desk.uncertainty.Bounds;
import tautlog.desk.uncertainty.Doubt;
import tautlog.desk.uncertainty.Extreme;
import tautlog.desk.uncertainty.Interval;
import tautlog.desk.uncertainty.RelatedTensions;
import tautlog.detect.Finding;
import tautlog.recording.RecordingException;
import tautlog.rig.Band;
import tautlog.rig.Hookup;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.SampleRate;

/**
 * Turns the findings of one outing from sample numbers and counts into times and newtons. Formulas: {@code
 * analyzer/FINDINGS.md}.
 */
public final class Derivation {
    private static final int LEAST_SETTLED = 20;
    private static final BigDecimal SETTLED_FROM_SECONDS = new BigDecimal("0.5");
    private static final BigDecimal SETTLED_TO_SECONDS = new BigDecimal("1.5");
    private static final BigDecimal JOLT_WINDOW_SECONDS = new BigDecimal("0.5");
    private static final String SETTLED_UNKNOWN = "what it settled at is not known, or is nothing";

    private final Rig rig;
    private final Calibration calibration;
    private final SampleRate rate;
    private final Places places;
    private final Doubt doubt;

    public Derivation(Rig rig, Calibration calibration, SampleRate rate, Places places, Doubt doubt) {
        this.rig = rig;
        this.calibration = calibration;
        this.rate = rate;
        this.places = places;
        this.doubt = doubt;
    }

    /** Where the outing knows more than a finding says. */
    public interface Places {
        Moment atNumber(long number) throws RecordingException;

        Moment atTick(long tick) throws RecordingException;

        /** The count of a sample that exists. */
        int countAt(long number) throws RecordingException;

        /** Id of the hookup on at sample {@code number}. */
        String hookupAt(long number);

        /** Whether the hookup on at sample {@code number} is only assumed. */
        boolean isAssumed(long number);
    }

    public Entry.Pull pull(Finding.Pull pull) throws RecordingException {
        Entry.Against against = against(pull.hookup(), pull.hookupIsAssumed());
        double sum = calibration.meanNewtons(pull.countSum(), pull.countSquares(), pull.samples()) * pull.samples();
        Interval mean = doubt.ofMean(sum / pull.samples(), pull.samples(), pull.atLeast());
        return new Entry.Pull(
                places.atNumber(pull.startNumber()),
                places.atNumber(pull.endNumber()),
                rate.seconds(pull.endNumber() - pull.startNumber() + 1),
                newtons(pull.peak()),
                sum / pull.samples(),
                sum / rate.hertz(),
                against,
                newtons(pull.shareCounts()) / against.newtons(),
                pull.overloads(),
                pull.shocks(),
                pull.held(),
                pull.atLeast(),
                pull.hasGap(),
                pull.cutByGap(),
                pull.cutByEnd(),
                doubt.ofPeak(pull.peak(), pull.startNumber(), pull.endNumber(), pull.atLeast()),
                mean,
                Bounds.impulse(mean, rate.seconds(pull.samples()), pull.hasGap()),
                doubt.ofPeak(pull.shareCounts(), pull.startNumber(), pull.endNumber(), pull.atLeast()));
    }

    public Entry.Overload overload(Finding.Overload overload) throws RecordingException {
        Entry.Against against = against(overload.hookup(), overload.hookupIsAssumed());
        BigDecimal peak = calibration.exactNewtons(overload.peak());
        Hookup hookup = hookup(overload.hookup());
        Interval interval =
                doubt.ofPeak(overload.peak(), overload.startNumber(), overload.endNumber(), overload.atLeast());
        return new Entry.Overload(
                places.atNumber(overload.startNumber()),
                places.atNumber(overload.endNumber()),
                rate.seconds(overload.aboveSamples()),
                peak.doubleValue(),
                against,
                peak.doubleValue() / against.newtons(),
                hookup.band(peak).orElse(Band.PAST_WLL),
                overload.atLeast(),
                overload.hasGap(),
                overload.cutByGap(),
                overload.cutByEnd(),
                hookup.items().stream()
                        .map(item -> ItemLoad.of(item, rig, peak, interval))
                        .toList(),
                interval,
                BandDoubt.mayBe(hookup.items(), interval));
    }

    public Entry.Shock shock(Finding.Shock shock) throws RecordingException {
        long rise = shock.peakNumber() - shock.startNumber();
        double riseSeconds = rate.seconds(rise);
        double peak = newtons(shock.peak());
        OptionalDouble settled = shock.settledKnown()
                ? OptionalDouble.of(calibration.newtons(shock.settledTwice() / 2.0))
                : OptionalDouble.empty();
        boolean hasFactor = settled.isPresent() && settled.getAsDouble() > 0;
        Entry.Against against = against(shock.hookup(), places.isAssumed(shock.peakNumber()));
        int footCount = places.countAt(shock.startNumber());
        Extreme foot = new Extreme(footCount, shock.startNumber(), 1);
        Extreme top = new Extreme(
                shock.peak(), shock.peakNumber(), rate.samplesIn(rig.detect().shockWindowSeconds()));
        RelatedTensions related = doubt.related();
        return new Entry.Shock(
                places.atNumber(shock.startNumber()),
                places.atNumber(shock.peakNumber()),
                rate.seconds(shock.slackSamples()),
                riseSeconds,
                (peak - newtons(footCount)) / riseSeconds,
                peak,
                ifHalfSine(peak, rise),
                doubt.isResolved(shock.startNumber(), shock.peakNumber()),
                settled,
                hasFactor ? OptionalDouble.of(peak / settled.getAsDouble()) : OptionalDouble.empty(),
                against,
                peak / against.newtons(),
                shock.atLeast(),
                shock.hasGap(),
                doubt.ofPeak(shock.peak(), shock.startNumber(), shock.peakNumber(), shock.atLeast()),
                RelatedTensions.riseRate(related.rise(foot, top, shock.atLeast()), rise, rate.seconds(1)),
                shock.settledKnown()
                        ? related.settled(shock.settledTwice() / 2.0, settledReadings(shock))
                        : Interval.unknown(SETTLED_UNKNOWN),
                hasFactor
                        ? related.factor(foot, top, shock.settledTwice() / 2.0, settledReadings(shock), shock.atLeast())
                        : Bounds.unknown(SETTLED_UNKNOWN));
    }

    /**
     * Of how many readings the level is the median, or of more: the finding does not keep it. Cut short they are 20 or more, else
     * the whole second, unless readings are missing in it.
     */
    private long settledReadings(Finding.Shock shock) {
        int whole = rate.samplesIn(SETTLED_TO_SECONDS) - rate.samplesIn(SETTLED_FROM_SECONDS);
        return shock.hasGap() ? 1 : Math.max(1, Math.min(LEAST_SETTLED, whole));
    }

    /** The crest of a half sine whose quarter period is {@code rise} samples, if it lay between two of them. */
    static double ifHalfSine(double peakNewtons, long rise) {
        return peakNewtons / Math.cos(Math.PI / (4 * rise));
    }

    public Entry.Jolt jolt(Finding.Jolt jolt) throws RecordingException {
        Entry.Against against = against(jolt.hookup(), places.isAssumed(jolt.peakNumber()));
        double peak = newtons(jolt.peak());
        return new Entry.Jolt(
                places.atNumber(jolt.startNumber()),
                places.atNumber(jolt.peakNumber()),
                peak,
                peak - newtons(jolt.least()),
                rate.seconds(jolt.peakNumber() - jolt.startNumber()),
                against,
                peak / against.newtons(),
                jolt.atLeast(),
                doubt.ofPeak(jolt.peak(), jolt.startNumber(), jolt.peakNumber(), jolt.atLeast()),
                doubt.isResolved(jolt.startNumber(), jolt.peakNumber()),
                doubt.related().rise(foot(jolt), top(jolt), jolt.atLeast()));
    }

    private Extreme foot(Finding.Jolt jolt) {
        return new Extreme(
                jolt.least(), jolt.startNumber(), rate.samplesIn(rig.detect().joltWithinSeconds()));
    }

    private Extreme top(Finding.Jolt jolt) {
        return new Extreme(jolt.peak(), jolt.peakNumber(), rate.samplesIn(JOLT_WINDOW_SECONDS));
    }

    public Entry.Drop drop(Finding.Drop drop) throws RecordingException {
        return new Entry.Drop(
                places.atNumber(drop.startNumber()),
                newtons(drop.before()),
                newtons(drop.after()),
                rate.seconds(drop.fallNumber() - drop.startNumber()),
                drop.staysSlack(),
                drop.shaft(),
                drop.clutch(),
                drop.brake(),
                against(places.hookupAt(drop.startNumber()), places.isAssumed(drop.startNumber())),
                doubt.ofPeak(drop.before(), drop.startNumber(), drop.startNumber(), false),
                doubt.ofReading(drop.after()));
    }

    public Entry.Stall stall(Finding.Stall stall) throws RecordingException {
        return new Entry.Stall(
                places.atTick(stall.startTick()),
                places.atTick(stall.endTick()),
                stall.ended(),
                stall.leastRpm(),
                stall.baselineRpm(),
                newtons(stall.counts()),
                doubt.ofReading(stall.counts()));
    }

    public Entry.Trouble trouble(Finding.Trouble trouble) throws RecordingException {
        return new Entry.Trouble(
                places.atNumber(trouble.startNumber()), places.atNumber(trouble.endNumber()), trouble.trouble());
    }

    private double newtons(int counts) {
        return calibration.exactNewtons(counts).doubleValue();
    }

    private Entry.Against against(String id, boolean assumed) {
        Hookup hookup = hookup(id);
        return new Entry.Against(
                hookup.id(),
                assumed,
                hookup.limit().newtons().doubleValue(),
                hookup.limit().isAtMost(),
                hookup.limit().governing());
    }

    private Hookup hookup(String id) {
        return rig.hookup(id)
                .orElseThrow(() -> new IllegalStateException("the detectors named hookup " + id + ", the rig has "
                        + rig.hookups().stream().map(Hookup::id).toList()));
    }

    /** A list of entries under construction, one kind at a time. */
    public interface Step<F, E> {
        E derive(F finding) throws RecordingException;
    }

    /** All findings of one kind, derived, in their order. */
    public static <F extends Finding, E> void each(List<Finding> findings, Class<F> kind, Step<F, E> step, List<E> into)
            throws RecordingException {
        for (Finding finding : findings) {
            if (kind.isInstance(finding)) {
                into.add(step.derive(kind.cast(finding)));
            }
        }
    }
}

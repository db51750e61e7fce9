package tautlog.desk.incident;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tautlog.desk.analysis.Study;
import tautlog.desk.report.Moment;

/**
 * Where a moment lies among the outings.
 *
 * @param study the outing under way then, else one that ended or began within the window; empty when there is none
 * @param isUnderWay it was under way then
 * @param seconds since its first reading, below 0 or beyond its end where it was not under way; 0 without one
 * @param before the latest outing that had ended by then
 * @param after the first that began later
 * @param undated outings without a clock, of which nobody can say when they were
 */
record Scene(
        Optional<Study> study,
        boolean isUnderWay,
        double seconds,
        Optional<Study> before,
        Optional<Study> after,
        long undated) {
    static Scene of(List<Study> studies, Window window) {
        return window.at().map(at -> at(studies, window, at)).orElseGet(() -> into(studies, window));
    }

    /** Of an outing without a clock nothing else is before or after. */
    private static Scene into(List<Study> studies, Window window) {
        Study study = studies.stream()
                .filter(one -> one.ordinal() == window.when().inOuting().orElseThrow())
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(
                        "there is no " + window.when().words()));
        double seconds = window.when().secondsInOuting().orElseThrow();
        boolean isUnderWay = seconds <= last(study).seconds();
        return new Scene(
                Optional.of(study).filter(one -> isUnderWay || window.holds(last(one))),
                isUnderWay,
                seconds,
                Optional.of(study).filter(one -> !isUnderWay),
                Optional.empty(),
                undated(studies));
    }

    private static Scene at(List<Study> studies, Window window, Instant at) {
        Optional<Study> under = studies.stream()
                .filter(study -> start(study).filter(utc -> !utc.isAfter(at)).isPresent()
                        && end(study).filter(utc -> !utc.isBefore(at)).isPresent())
                .findFirst();
        Optional<Study> before = studies.stream()
                .filter(study -> end(study).filter(at::isAfter).isPresent())
                .max(Comparator.comparing(study -> end(study).orElseThrow()));
        Optional<Study> after = studies.stream()
                .filter(study -> start(study).filter(at::isBefore).isPresent())
                .min(Comparator.comparing(study -> start(study).orElseThrow()));
        Optional<Study> near = under.or(() -> before.filter(study -> window.holds(last(study))))
                .or(() -> after.filter(study -> window.holds(first(study))));
        return new Scene(
                near,
                under.isPresent(),
                near.map(study -> secondsAt(study, at)).orElse(0.0),
                before,
                after,
                undated(studies));
    }

    private static long undated(List<Study> studies) {
        return studies.stream().filter(study -> start(study).isEmpty()).count();
    }

    static Moment first(Study study) {
        return study.times().ofTick(study.member().outing().firstTick());
    }

    static Moment last(Study study) {
        return study.times().ofTick(study.member().outing().lastTick());
    }

    private static Optional<Instant> start(Study study) {
        return first(study).utc();
    }

    private static Optional<Instant> end(Study study) {
        return last(study).utc();
    }

    /** The outing's seconds at which its clock said {@code at}: the clock rises, so half the ticks are ruled out each time. */
    private static double secondsAt(Study study, Instant at) {
        Instant start = start(study).orElseThrow();
        Instant end = end(study).orElseThrow();
        if (at.isBefore(start)) {
            return -Duration.between(at, start).toNanos() / 1e9;
        }
        if (at.isAfter(end)) {
            return last(study).seconds() + Duration.between(end, at).toNanos() / 1e9;
        }
        long low = study.member().outing().firstTick();
        long high = study.member().outing().lastTick();
        while (low < high) {
            long middle = low + (high - low) / 2;
            if (study.times().utc(middle).orElseThrow().isBefore(at)) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return study.times().seconds(low);
    }
}

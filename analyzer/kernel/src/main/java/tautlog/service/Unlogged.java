package tautlog.service;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Turns hours entered by hand into stints. */
final class Unlogged {
    private static final double SECONDS_PER_HOUR = 3_600;

    private Unlogged() {}

    static List<Stint> stints(List<Entry> entries) {
        return entries.stream()
                .map(Entry::act)
                .filter(Act.Worked.class::isInstance)
                .map(act -> stint((Act.Worked) act))
                .toList();
    }

    /** Hours that were not entered are at most the time from begin to end; pulls and wear of the joint may be anything. */
    private static Stint stint(Act.Worked worked) {
        double hours = Duration.between(worked.from(), worked.to()).toSeconds() / SECONDS_PER_HOUR;
        Amount any = Amount.between(0, hours);
        return new Stint(
                Optional.of(worked.from()),
                Optional.of(worked.to()),
                Map.of(
                        Meter.SHAFT_H, known(worked.shaftHours()).orElse(any),
                        Meter.PULL_H, known(worked.pullHours()).orElse(any),
                        Meter.PULLS, known(worked.pulls()).orElse(Amount.UNKNOWN),
                        Meter.JOINT_H, joint(worked)),
                Optional.empty(),
                List.of());
    }

    /** A shaft that stood still wore no joint. */
    private static Amount joint(Act.Worked worked) {
        return worked.shaftHours().filter(hours -> hours.signum() == 0).isPresent() ? Amount.NONE : Amount.UNKNOWN;
    }

    private static Optional<Amount> known(Optional<BigDecimal> entered) {
        return entered.map(value -> Amount.known(value.doubleValue()));
    }
}

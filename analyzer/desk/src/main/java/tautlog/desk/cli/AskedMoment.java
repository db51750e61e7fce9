package tautlog.desk.cli;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.ZoneId;
import java.util.List;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import tautlog.desk.analysis.Study;
import tautlog.desk.incident.IncidentStudy;
import tautlog.desk.incident.When;

/** The moment that {@code --at} and {@code --outing} name: a time, or seconds from the start of an outing. */
final class AskedMoment {
    private static final Pattern SECONDS = Pattern.compile("(\\d{1,7}(?:\\.\\d{1,6})?)\\s*s?");

    private AskedMoment() {}

    /**
     * An outing that has a clock turns seconds from its start into a time.
     *
     * @param outing its place among {@code studies}, from 1; empty where {@code at} is a time
     */
    static When of(String at, OptionalInt outing, ZoneId zone, List<Study> studies) throws UsageException {
        if (outing.isEmpty()) {
            return new When.At(LocalTime.instant("--at", at, zone));
        }
        double seconds = seconds(at);
        Study study = studies.stream()
                .filter(one -> one.ordinal() == outing.getAsInt())
                .findFirst()
                .orElseThrow(() -> new UsageException("--outing: there is no outing " + outing.getAsInt()
                        + " in the recordings given; they hold " + studies.size() + ".\n  " + undated(studies)));
        return IncidentStudy.moment(study, seconds)
                .utc()
                .<When>map(When.At::new)
                .orElseGet(() -> new When.IntoOuting(study.ordinal(), seconds));
    }

    /** Refuses what is no time, or no seconds, before anything is read. */
    static void check(String at, OptionalInt outing, ZoneId zone) throws UsageException {
        if (outing.isEmpty()) {
            LocalTime.instant("--at", at, zone);
        } else {
            seconds(at);
        }
    }

    private static double seconds(String at) throws UsageException {
        Matcher number = SECONDS.matcher(at.strip());
        if (!number.matches()) {
            throw new UsageException("--at: \"" + at + "\" is no time from an outing's start.\n  With --outing write"
                    + " seconds: 125.4s.");
        }
        return Double.parseDouble(number.group(1));
    }

    /** Which outings can only be named so. */
    static String undated(List<Study> studies) {
        List<String> without = studies.stream()
                .filter(study -> IncidentStudy.moment(study, 0).utc().isEmpty())
                .map(AskedMoment::words)
                .toList();
        return without.isEmpty()
                ? "Each of them has a clock: name a time with --at alone."
                : without.stream().collect(Collectors.joining("; ", "Without a clock: ", "."));
    }

    private static String words(Study study) {
        double seconds = study.times().seconds(study.member().outing().lastTick());
        return "--outing " + study.ordinal() + " ("
                + BigDecimal.valueOf(seconds).setScale(1, RoundingMode.FLOOR).toPlainString() + " s, outing "
                + (study.member().outing().index() + 1) + " of "
                + study.member().file().getFileName() + ")";
    }
}

package tautlog.desk.service;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.hipparchus.distribution.continuous.TDistribution;
import tautlog.service.Amount;
import tautlog.service.Meter;
import tautlog.service.Stint;

/**
 * How much of a meter was used up in each of the last whole weeks, Monday to Sunday.
 *
 * <p>What the next K weeks will use up, taken as like those n and independent of each other: K · mean, and with 95 % within t · s · √(K +
 * K²/n) of it, with s their standard deviation and t of n − 1 degrees of freedom (the prediction interval of a sum of K values, the mean of
 * which is known from n).
 *
 * @param weeks oldest first, those without use among them; from the second week with a recording on, as the first may have begun before it
 * @param shares which share of it fell on Monday, …, Sunday
 * @param isPartial a noticeable part of it is not known: it may have been more
 */
record WeeklyUse(List<Double> weeks, List<Double> shares, boolean isPartial) {
    /** Chosen: a tenth more than is known would be noticed in a date. */
    private static final double NOTICEABLE = 0.1;

    /** Chosen: about a third of a season; long enough for a spread, short enough to follow the season. */
    static final int MOST_WEEKS = 12;
    /** Chosen: from two weeks no spread can be told. */
    static final int LEAST_WEEKS_WITH_USE = 3;

    private static final int DAYS = 7;
    /** Both ends together leave 5 % outside. */
    private static final double QUANTILE = 0.975;

    WeeklyUse {
        weeks = List.copyOf(weeks);
        shares = List.copyOf(shares);
    }

    /** Empty when fewer than {@link #LEAST_WEEKS_WITH_USE} of the weeks have use. */
    static Optional<WeeklyUse> of(List<Stint> work, Meter meter, Optional<String> gear, LocalDate today, ZoneId zone) {
        TreeMap<LocalDate, Double> days = daily(work, meter, gear, zone);
        if (days.isEmpty()) {
            return Optional.empty();
        }
        LocalDate thisWeek = monday(today);
        LocalDate second = monday(days.firstKey()).plusWeeks(1);
        LocalDate earliest = thisWeek.minusWeeks(MOST_WEEKS);
        List<Double> weeks = new ArrayList<>();
        double[] byDay = new double[DAYS];
        for (LocalDate week = second.isAfter(earliest) ? second : earliest;
                week.isBefore(thisWeek);
                week = week.plusWeeks(1)) {
            double used = 0;
            for (int day = 0; day < DAYS; day++) {
                double amount = days.getOrDefault(week.plusDays(day), 0.0);
                byDay[day] += amount;
                used += amount;
            }
            weeks.add(used);
        }
        long withUse = weeks.stream().filter(used -> used > 0).count();
        return withUse < LEAST_WEEKS_WITH_USE
                ? Optional.empty()
                : Optional.of(new WeeklyUse(weeks, shares(byDay), isPartial(work, meter, gear, earliest, zone)));
    }

    private static List<Double> shares(double[] byDay) {
        double sum = java.util.Arrays.stream(byDay).sum();
        return java.util.Arrays.stream(byDay).mapToObj(day -> day / sum).toList();
    }

    private static boolean isPartial(
            List<Stint> work, Meter meter, Optional<String> gear, LocalDate from, ZoneId zone) {
        if (!meter.addsUp()) {
            return false;
        }
        Amount sum = work.stream()
                .filter(stint -> stint.start()
                        .map(start -> !start.atZone(zone).toLocalDate().isBefore(from))
                        .orElse(true))
                .map(stint -> stint.amount(meter, gear))
                .reduce(Amount.NONE, Amount::plus);
        double known = meter.deciding(sum);
        return sum.greatest().orElse(Double.POSITIVE_INFINITY) - known > NOTICEABLE * known;
    }

    private static LocalDate monday(LocalDate day) {
        return day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    }

    /** An outing counts for the day on which it began; hours entered for several days evenly for each. */
    private static TreeMap<LocalDate, Double> daily(List<Stint> work, Meter meter, Optional<String> gear, ZoneId zone) {
        TreeMap<LocalDate, Double> days = new TreeMap<>();
        for (Stint stint : work) {
            if (stint.start().isEmpty() || stint.end().isEmpty()) {
                continue;
            }
            LocalDate first = stint.start().get().atZone(zone).toLocalDate();
            if (meter == Meter.USE_DAYS) {
                days.put(first, 1.0);
                continue;
            }
            double amount = meter.deciding(stint.amount(meter, gear));
            long span = spanDays(stint.start().get(), stint.end().get());
            for (long day = 0; day < span; day++) {
                days.merge(first.plusDays(day), amount / span, Double::sum);
            }
        }
        return days;
    }

    /** 1 for an outing, which is of the day on which it began. */
    private static long spanDays(Instant start, Instant end) {
        return Math.max(1, Math.round(Duration.between(start, end).toHours() / 24.0));
    }

    double mean() {
        return weeks.stream().mapToDouble(week -> week).average().orElse(0);
    }

    /** Half the width of the interval in which what {@code count} weeks use up lies with 95 %. */
    double half(double count) {
        int n = weeks.size();
        double mean = mean();
        double squares = weeks.stream()
                .mapToDouble(week -> (week - mean) * (week - mean))
                .sum();
        double sd = Math.sqrt(squares / (n - 1));
        double t = new TDistribution(n - 1).inverseCumulativeProbability(QUANTILE);
        return t * sd * Math.sqrt(count + count * count / n);
    }

    /** The share of a week's use that falls on {@code day}. */
    double share(LocalDate day) {
        return shares.get(day.getDayOfWeek().getValue() - 1);
    }
}

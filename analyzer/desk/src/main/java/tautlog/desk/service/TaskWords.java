package tautlog.desk.service;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tautlog.desk.page.Screen;
import tautlog.service.Amount;
import tautlog.service.Happening;
import tautlog.service.Meter;
import tautlog.service.Since;
import tautlog.service.TaskState;

/** Says how a task stands. */
final class TaskWords {
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("d MMM uuuu HH:mm", Locale.ENGLISH);

    private final ZoneId zone;

    TaskWords(ZoneId zone) {
        this.zone = zone;
    }

    /** {@code 9.30 of 8 h of the shaft; overload on 4 May 2026 10:02}. */
    String why(TaskState state) {
        List<String> parts = new ArrayList<>();
        state.meters().forEach(used -> parts.add(used(used)));
        if (!state.calls().isEmpty()) {
            parts.add(calls(state.calls()));
        } else if (state.task().after().isPresent()) {
            parts.add("no " + state.task().after().get() + " is known since");
        }
        return String.join("; ", parts);
    }

    /** {@code last done 4 May 2026 14:30 by Wren}. */
    String since(Since since) {
        String by = since.entry()
                .flatMap(entry -> entry.by())
                .map(name -> " by " + name)
                .orElse("");
        String at = since.at().map(this::time).orElse("");
        return switch (since.kind()) {
            case DONE -> "last done " + at + by;
            case INSPECTED -> "inspected " + at + by;
            case FITTED -> "fitted " + since.at().map(this::time).orElse("") + by;
            case NEVER -> "never entered as done";
        };
    }

    String time(Instant at) {
        return MINUTE.format(at.atZone(zone));
    }

    private String calls(List<Happening> calls) {
        String kind = calls.get(0).kind();
        String first = calls.get(0).at().map(at -> "on " + time(at)).orElse("at an unknown time");
        return calls.size() == 1 ? kind + " " + first : Screen.counted(calls.size(), kind) + ", the first " + first;
    }

    private static String used(TaskState.Used used) {
        String of = " of " + used.interval().stripTrailingZeros().toPlainString() + " "
                + used.meter().words();
        return amount(used.meter(), used.amount()) + of;
    }

    static String amount(Meter meter, Amount amount) {
        String least = number(meter, amount.least(), RoundingMode.FLOOR);
        if (amount.isKnown()) {
            return least;
        }
        if (amount.greatest().isEmpty()) {
            return amount.least() == 0 ? "an unknown part" : "at least " + least;
        }
        String greatest = number(meter, amount.greatest().getAsDouble(), RoundingMode.CEILING);
        return meter == Meter.JOINT_H && amount.least() == 0 ? "at most " + greatest : least + " to " + greatest;
    }

    private static String number(Meter meter, double value, RoundingMode rounding) {
        boolean isHours = meter == Meter.SHAFT_H || meter == Meter.PULL_H || meter == Meter.JOINT_H;
        return BigDecimal.valueOf(value)
                .setScale(9, RoundingMode.HALF_EVEN) // 8 that came out as 7.999999999999
                .setScale(isHours ? 2 : 0, rounding)
                .toPlainString();
    }
}

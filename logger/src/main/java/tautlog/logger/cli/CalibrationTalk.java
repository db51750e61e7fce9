package tautlog.logger.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import tautlog.logger.calibrate.ReadingsFile;
import tautlog.logger.calibrate.SteadyMean;
import tautlog.logger.calibrate.TypedLine;
import tautlog.logger.run.CountWatch;
import tautlog.quantity.ForceUnit;

/** Typed lines in, rows and words out. */
final class CalibrationTalk {
    /** Chosen: a step that is off by more says that cable, converter or cell have changed since the calibration. */
    private static final double SHUNT_SHARE = 0.01;

    private static final TypedLine.Load SLACK = new TypedLine.Load("0", ForceUnit.KN, "", "");

    /** Where questions and trouble are said. Questions only where a person sits at a terminal. */
    record Prompts(PrintWriter err, boolean isTerminal) {
        void ask(String words) {
            if (isTerminal) {
                say(words);
            }
        }

        void say(String words) {
            err.println(words);
            err.flush();
        }
    }

    /** A load and what was read under it. */
    private record Read(TypedLine.Load load, SteadyMean mean) {}

    private final CountWatch counts;
    private final long waitMillis;
    private final ForceUnit unit;
    private final Optional<ReadingsFile> table;
    private final Optional<BigDecimal> shuntOfTheDay;
    private final Prompts prompts;
    private final PrintWriter out;
    private Optional<Read> last = Optional.empty();
    private int exit = ExitCode.DONE;

    CalibrationTalk(
            CountWatch counts,
            long waitMillis,
            ForceUnit unit,
            Optional<ReadingsFile> table,
            Optional<BigDecimal> shuntOfTheDay,
            Prompts prompts,
            PrintWriter out) {
        this.counts = counts;
        this.waitMillis = waitMillis;
        this.unit = unit;
        this.table = table;
        this.shuntOfTheDay = shuntOfTheDay;
        this.prompts = prompts;
        this.out = out;
    }

    /** Reads line after line until there is no more. */
    int takeReadings(BufferedReader typed) throws IOException, InterruptedException {
        prompts.ask("Type the load that hangs, then Enter: LOAD [UNIT] [up or down] [RUN]; shunt; done.");
        String line = typed.readLine();
        while (line != null && !(TypedLine.read(line, unit) instanceof TypedLine.Done)) {
            take(TypedLine.read(line, unit));
            prompts.ask("Next load, shunt or done:");
            line = typed.readLine();
        }
        return exit;
    }

    private void take(TypedLine line) throws IOException, InterruptedException {
        if (line instanceof TypedLine.Load load) {
            load(load);
        } else if (line instanceof TypedLine.Shunt) {
            shunt();
        } else if (line instanceof TypedLine.Unclear unclear) {
            prompts.say(unclear.words());
            exit = prompts.isTerminal() ? exit : ExitCode.USAGE; // a person types it again
        }
    }

    private void load(TypedLine.Load load) throws IOException, InterruptedException {
        boolean isOther = last.filter(read -> isSame(read.load(), load)).isEmpty();
        Optional<SteadyMean> mean = steady(isOther ? last : Optional.empty());
        if (mean.isEmpty()) {
            return;
        }
        last = Optional.of(new Read(load, mean.get()));
        if (table.isPresent()) {
            table.get().add(load, mean.get(), Instant.now());
        }
        say("%s %s %s", load.load(), load.unit().symbol(), words(mean.get()));
    }

    private static boolean isSame(TypedLine.Load one, TypedLine.Load other) {
        return newtons(one).compareTo(newtons(other)) == 0;
    }

    private static BigDecimal newtons(TypedLine.Load load) {
        return new BigDecimal(load.load()).multiply(load.unit().newtons());
    }

    /** @param movedFrom steady counts that still stand where they stood then are those of the load before */
    private Optional<SteadyMean> steady(Optional<Read> movedFrom) throws InterruptedException {
        prompts.ask("Waiting until the counts are steady …");
        long end = System.nanoTime() + waitMillis * 1_000_000;
        boolean hasStood = false;
        for (long left = waitMillis; left > 0; left = (end - System.nanoTime()) / 1_000_000) {
            Optional<SteadyMean> mean = counts.await(left);
            if (mean.isEmpty()) {
                break; // time is up, or none can come
            }
            if (movedFrom
                    .filter(before -> hasNotMoved(before.mean(), mean.get()))
                    .isEmpty()) {
                return mean;
            }
            hasStood = true;
        }
        prompts.say("tautlogd: no steady reading, nothing is written: "
                + (hasStood ? "the counts have not moved since the reading before" : counts.hindrance()));
        exit = ExitCode.UNUSABLE;
        return Optional.empty();
    }

    private static boolean hasNotMoved(SteadyMean before, SteadyMean now) {
        double noise = 6 * Math.max(before.sd(), now.sd()) / Math.sqrt(now.samples());
        return Math.abs(now.mean() - before.mean()) <= noise + 1;
    }

    private static String words(SteadyMean mean) {
        return String.format(
                Locale.ROOT, "counts %.1f, sd %.1f over %d samples", mean.mean(), mean.sd(), mean.samples());
    }

    private void say(String words, Object... values) {
        out.println(String.format(Locale.ROOT, words, values));
        out.flush();
    }

    /** Slack line, resistor on, step. */
    int checkShunt(BufferedReader typed) throws IOException, InterruptedException {
        load(SLACK);
        if (last.isEmpty()) {
            return exit;
        }
        prompts.ask("Switch the shunt resistor on, then Enter.");
        if (typed.readLine() == null) {
            prompts.say("tautlogd: nobody said that the shunt is on: send a line when it is");
            return ExitCode.USAGE;
        }
        shunt();
        return exit;
    }

    private void shunt() throws IOException, InterruptedException {
        if (last.isEmpty()) {
            prompts.say("take a reading without the shunt first, at the same load");
            exit = ExitCode.USAGE;
            return;
        }
        Optional<SteadyMean> mean = steady(last);
        if (mean.isEmpty()) {
            return;
        }
        if (table.isPresent()) {
            table.get().addShunt(last.get().load(), mean.get(), Instant.now());
        }
        double step = mean.get().mean() - last.get().mean().mean();
        say("shunt %s: a step of %.1f counts", words(mean.get()), step);
        shuntOfTheDay.ifPresentOrElse(
                day -> compare(step, day.doubleValue()),
                () -> say("The calibration holds no step to compare it with (shunt_step_counts)."));
    }

    private void compare(double step, double day) {
        double off = step / day - 1;
        say("On the day of the calibration it was %.1f counts: %+.2f %%.", day, 100 * off);
        if (Math.abs(off) > SHUNT_SHARE) {
            say("MORE THAN 1 % OFF: cable, moisture, converter or cell have changed. Do not trust the calibration."
                    .replace("%", "%%"));
            exit = Math.max(exit, ExitCode.FOUND);
        }
    }
}

package tautlog.desk.cli;

import java.io.IOException;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tautlog.service.Act;

/** Enters hours that were worked while nothing was recorded. */
@Command(
        name = "worked",
        headerHeading = "Examples:%n"
                + "  tautlog service worked --from 2026-05-04 --to 2026-05-06 --shaft-h 9 --pull-h 2.5 --pulls 40%n"
                + "      --ledger ledger.jsonl%n"
                + "  tautlog service worked --from 2026-05-04T08:00 --to 2026-05-04T11:30 --shaft-h 2 --ledger ledger.jsonl%n"
                + "%n",
        header = "Enters hours that were worked while nothing was recorded.",
        description = {"", "What is not given counts as unknown, not as none: give 0 where it was none.", ""},
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class ServiceWorkedCommand implements Callable<Integer> {
    @Option(names = "--from", required = true, paramLabel = "T", description = "Begin; a day alone is its beginning.")
    private String from = "";

    @Option(names = "--to", required = true, paramLabel = "T", description = "End; a day alone is its end.")
    private String to = "";

    @Option(names = "--shaft-h", paramLabel = "H", description = "Hours with the shaft turning.")
    private @Nullable BigDecimal shaft;

    @Option(names = "--pull-h", paramLabel = "H", description = "Hours in pulls.")
    private @Nullable BigDecimal pull;

    @Option(names = "--pulls", paramLabel = "N", description = "How many pulls.")
    private @Nullable Integer pulls;

    @Mixin
    private LedgerEntry entry = new LedgerEntry();

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws IOException, UsageException {
        ZoneId zone = entry.zone();
        Instant begin = LocalTime.instant("--from", from, zone);
        Instant end = end(zone);
        Instant now = Instant.now();
        LedgerEntry.refuseFuture("--from", from, begin, now);
        if (!begin.isBefore(end)) {
            throw new UsageException(
                    "--to: " + to + " does not lie after --from " + from + ".\n  Give the earlier one as --from.");
        }
        Optional<BigDecimal> shaftHours = hours("--shaft-h", shaft, begin, end);
        Optional<BigDecimal> pullHours = hours("--pull-h", pull, begin, end);
        if (pulls != null && pulls < 0) {
            throw new UsageException("--pulls: " + pulls + " is below 0.\n  Allowed: from 0.");
        }
        return entry.enter(
                new Act.Worked(
                        begin,
                        end,
                        shaftHours,
                        pullHours,
                        Optional.ofNullable(pulls).map(BigDecimal::valueOf)),
                end,
                now,
                spec.commandLine().getOut());
    }

    private Instant end(ZoneId zone) throws UsageException {
        Instant written = LocalTime.instant("--to", to, zone);
        boolean isDay = to.length() <= LocalDate.EPOCH.toString().length();
        return isDay
                ? written.atZone(zone)
                        .toLocalDate()
                        .plusDays(1)
                        .atStartOfDay(zone)
                        .toInstant()
                : written;
    }

    private static Optional<BigDecimal> hours(String option, @Nullable BigDecimal hours, Instant begin, Instant end)
            throws UsageException {
        if (hours != null && !Act.Worked.fits(hours, begin, end)) {
            throw new UsageException(option + ": " + hours.toPlainString()
                    + " is out of range.\n  Allowed: from 0 to the hours between --from and --to.");
        }
        return Optional.ofNullable(hours);
    }
}

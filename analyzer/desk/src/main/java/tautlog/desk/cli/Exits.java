package tautlog.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.math.BigDecimal;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.Optional;
import picocli.CommandLine;
import tautlog.config.ConfigException;
import tautlog.config.NearestKey;
import tautlog.desk.analysis.QuestionException;
import tautlog.desk.importing.ImportException;
import tautlog.desk.report.LeftOut;
import tautlog.recording.RecordingException;
import tautlog.service.Complaint;
import tautlog.service.Ledger;

/** Exit codes, and what is said with them. */
final class Exits implements CommandLine.IParameterExceptionHandler, CommandLine.IExecutionExceptionHandler {
    static final int DONE = 0;
    /** Done, and something at or above {@code --fail-on} was found. */
    static final int FOUND = 1;
    /** Wrong usage or configuration; nothing was started. */
    static final int USAGE = 2;
    /** A recording or file could not be used. */
    static final int UNUSABLE = 3;
    /** A bug in this program. */
    static final int BUG = 70;

    /** {@link #DONE} when nothing was left out; else says what on {@code err}. */
    static int whole(LeftOut leftOut, PrintWriter err) {
        leftOut.sentences().forEach(sentence -> err.println("left out: " + sentence));
        leftOut.damage().forEach(sentence -> err.println("damaged: " + sentence));
        err.flush();
        return leftOut.isNothing() ? DONE : UNUSABLE;
    }

    /** The same; {@link #UNUSABLE} also when a line of the ledger counts for nothing. What is to be said of its lines goes to {@code err}. */
    static int whole(LeftOut leftOut, Ledger ledger, PrintWriter err) {
        int recordings = whole(leftOut, err);
        ledger.complaints().forEach(err::println);
        err.flush();
        return ledger.complaints().stream().anyMatch(line -> line.weight() == Complaint.Weight.IGNORED)
                ? UNUSABLE
                : recordings;
    }

    @Override
    public int handleParseException(CommandLine.ParameterException wrong, String[] args) {
        CommandLine command = wrong.getCommandLine();
        PrintWriter err = command.getErr();
        err.println(notANumber(wrong).orElseGet(wrong::getMessage));
        suggest(wrong, err);
        err.println("See: " + command.getCommandSpec().qualifiedName() + " --help");
        err.flush();
        return USAGE;
    }

    /** What to write instead; empty when something else is wrong. */
    private static Optional<String> notANumber(CommandLine.ParameterException wrong) {
        return wrong.getArgSpec() instanceof CommandLine.Model.OptionSpec option
                        && wrong.getValue() != null
                        && option.type() == BigDecimal.class
                ? Optional.of(option.longestName() + ": \"" + wrong.getValue()
                        + "\" is not a number.\n  Write digits with a point, as in 2.5.")
                : Optional.empty();
    }

    private static void suggest(CommandLine.ParameterException wrong, PrintWriter err) {
        String unknown = wrong instanceof CommandLine.UnmatchedArgumentException unmatched
                ? unmatched.getUnmatched().get(0)
                : "";
        if (unknown.startsWith("-")) {
            NearestKey.to(
                            unknown,
                            wrong.getCommandLine().getCommandSpec().optionsMap().keySet())
                    .ifPresent(option -> err.println("Did you mean: " + option + "?"));
        } else {
            CommandLine.UnmatchedArgumentException.printSuggestions(wrong, err);
        }
    }

    @Override
    public int handleExecutionException(Exception thrown, CommandLine command, CommandLine.ParseResult parsed) {
        PrintWriter err = command.getErr();
        int code = say(thrown, err);
        err.flush();
        return code;
    }

    private static int say(Exception thrown, PrintWriter err) {
        if (thrown instanceof UsageException
                || thrown instanceof ConfigException
                || thrown instanceof QuestionException
                || (thrown instanceof ImportException asked && asked.isUsage())) {
            err.println(thrown.getMessage());
            return USAGE;
        }
        if (thrown instanceof RecordingException || thrown instanceof ImportException) {
            err.println(thrown.getMessage());
            return UNUSABLE;
        }
        if (thrown instanceof IOException file) {
            err.println(explain(file));
            return UNUSABLE;
        }
        err.println(
                "This is a bug in tautlog. Please report it with what follows, the command line and, if you can, the"
                        + " recording.");
        thrown.printStackTrace(err);
        return BUG;
    }

    private static String explain(IOException thrown) {
        if (thrown instanceof NoSuchFileException missing) {
            return missing.getFile() + ": there is no such file or folder.\n  Check the name; make the folder first.";
        }
        if (thrown instanceof AccessDeniedException denied) {
            return denied.getFile() + ": access was denied.\n  Choose a file or folder that you may read and write.";
        }
        if (thrown instanceof FileSystemException disk) {
            return disk.getMessage() + "\n  Check the name and the room left on the disk.";
        }
        return "Reading or writing failed: " + thrown.getMessage() + "\n  Check the disk and the file, then try again.";
    }
}

package tautlog.logger.cli;

import java.io.IOException;
import java.io.PrintWriter;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.ParseResult;
import tautlog.config.ConfigException;

/** Says what went wrong, on stderr, and gives the exit code. */
final class Refusals implements IExecutionExceptionHandler {
    @Override
    public int handleExecutionException(Exception thrown, CommandLine command, ParseResult parsed) {
        PrintWriter err = command.getErr();
        if (thrown instanceof ConfigException wrong) {
            err.println(wrong.getMessage());
            return ExitCode.USAGE;
        }
        if (thrown instanceof IOException unusable) {
            err.println("tautlogd: " + unusable.getMessage());
            return ExitCode.UNUSABLE;
        }
        return bug(thrown, err);
    }

    static int bug(Throwable thrown, PrintWriter err) {
        err.println(
                "tautlogd: this is a bug in the program. Please report it with what follows, and keep the recording.");
        thrown.printStackTrace(err);
        err.flush();
        return ExitCode.BUG;
    }
}

package tautlog.logger.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine;

/** A command that asks another process's logger, run in this one: quicker than a program of its own. */
final class InProcess {
    private InProcess() {}

    /** What it prints to stdout. */
    static String out(List<String> arguments, String... more) {
        List<String> all = new ArrayList<>(arguments);
        all.addAll(List.of(more));
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        CommandLine command = TautlogDaemon.commandLine();
        command.setOut(new PrintWriter(out, true));
        command.setErr(new PrintWriter(err, true));
        int code = command.execute(all.toArray(String[]::new));
        if (code != 0) {
            throw new AssertionError("exit code " + code + ": " + err);
        }
        return out.toString();
    }
}

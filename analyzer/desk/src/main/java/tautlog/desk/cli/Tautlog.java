package tautlog.desk.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.function.IntSupplier;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import tautlog.desk.page.Ink;

/** The program at the desk: what was pulled, what was too much, what happened, how far to trust it. */
@Command(
        name = "tautlog",
        headerHeading = "Examples:%n"
                + "  tautlog report recordings/ --html day.html   what was pulled, what was too much%n"
                + "  tautlog limits --rig rig.toml                what each hookup may carry%n"
                + "%n",
        header = "The program at the desk.",
        description = {
            "",
            "Reads recordings of the pull in a winch's line and tells what was too much, what",
            "shocked, what happened. A measuring instrument, not a safety device.",
            ""
        },
        footer = {
            "",
            "Exit codes: 0 done, 1 found what --fail-on names, 2 wrong usage or rig, 3 a recording",
            "cannot be used or a result not written, 70 a bug, 130 stopped with Ctrl-C."
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
public final class Tautlog implements Runnable {
    private static final List<Class<?>> COMMANDS = List.of(
            ReportCommand.class,
            IncidentCommand.class,
            HoursCommand.class,
            ServiceCommand.class,
            LimitsCommand.class,
            PlanCommand.class,
            CalibrateCommand.class,
            VerifyCommand.class,
            PackCommand.class,
            ImportCommand.class,
            ExportCommand.class,
            ViewCommand.class);

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec = CommandLine.Model.CommandSpec.create();

    /** Runs one command and ends the process with its exit code. */
    @SuppressWarnings("SystemConsoleNull") // from Java 22 on a console may be no terminal: then NO_COLOR helps
    public static void main(String[] args) {
        boolean terminal = CommandLine.Help.Ansi.AUTO.enabled(); // a terminal, and NO_COLOR is not set
        Ink ink = terminal ? Ink.TERMINAL : Ink.PLAIN;
        PrintStream err = new PrintStream(new FileOutputStream(FileDescriptor.err), false, StandardCharsets.UTF_8);
        System.exit(guarded(err, () -> run(args, StandardOutput.ofProcess(), err, ink)));
    }

    /** The exit code of {@code program}; that of a bug for whatever it throws, memory that ran out too: 1 means "found". */
    @SuppressWarnings("CatchAndPrintStackTrace") // the process ends
    static int guarded(PrintStream err, IntSupplier program) {
        try {
            return program.getAsInt();
        } catch (Throwable thrown) {
            err.println("This is a bug in tautlog, or memory ran out. Please report it with what follows.");
            thrown.printStackTrace(err);
            err.flush();
            return Exits.BUG;
        }
    }

    /**
     * Runs one command.
     *
     * @param out takes the result, in UTF-8
     * @param err takes everything else
     * @return the exit code
     */
    public static int run(String[] args, OutputStream out, OutputStream err, Ink ink) {
        return run(args, new StandardOutput(out, StandardOutput.End.OTHER), err, ink);
    }

    static int run(String[] args, StandardOutput out, OutputStream err, Ink ink) {
        PrintWriter outWriter = writer(out);
        PrintWriter errWriter = writer(err);
        CommandLine line = commandLine(args)
                .setOut(outWriter)
                .setErr(errWriter)
                .setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF))
                .setUsageHelpWidth(88)
                .setParameterExceptionHandler(new Exits())
                .setExecutionExceptionHandler(new Exits());
        line.getSubcommands().values().forEach(command -> setInk(command, ink));
        int code = line.execute(args);
        outWriter.flush();
        Optional<String> complaint = out.complaint();
        complaint.ifPresent(errWriter::println);
        errWriter.flush();
        return complaint.isPresent() && code == Exits.DONE ? Exits.UNUSABLE : code;
    }

    /** The program with the command that {@code args} begins with, or all of them. */
    static CommandLine commandLine(String... args) {
        CommandLine line = new CommandLine(new Tautlog());
        commands(args).forEach(line::addSubcommand);
        return line;
    }

    /** The one that is named, or all: getting one ready takes some hundredths of a second. */
    private static List<Class<?>> commands(String[] args) {
        List<Class<?>> named = COMMANDS.stream()
                .filter(command -> args.length > 0 && name(command).equals(args[0]))
                .toList();
        return named.isEmpty() ? COMMANDS : named;
    }

    private static String name(Class<?> command) {
        return command.getAnnotation(Command.class).name();
    }

    private static void setInk(CommandLine command, Ink ink) {
        if (command.getCommandSpec().userObject() instanceof Inked inked) {
            inked.ink(ink);
        }
        command.getSubcommands().values().forEach(inner -> setInk(inner, ink));
    }

    private static PrintWriter writer(OutputStream stream) {
        return new PrintWriter(new OutputStreamWriter(stream, StandardCharsets.UTF_8), false);
    }

    /** Without a command: how to use the program; that is wrong usage. */
    @Override
    public void run() {
        throw new CommandLine.ParameterException(
                spec.commandLine(),
                "Name a command: " + String.join(", ", spec.subcommands().keySet()) + ".");
    }
}

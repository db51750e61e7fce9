package tautlog.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.ZoneId;
import java.util.HexFormat;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tautlog.calibration.CellCalibration;
import tautlog.config.ConfigException;
import tautlog.desk.notes.NoteBook;
import tautlog.desk.season.IndexFolder;
import tautlog.desk.season.Offer;
import tautlog.desk.season.SeasonWatch;
import tautlog.desk.web.WebServer;
import tautlog.quantity.ForceUnit;
import tautlog.rig.Rig;

/** The same in a browser: season, day, trace. */
@Command(
        name = "view",
        headerHeading = "Examples:%n"
                + "  tautlog view recordings/                     then open the address that is printed%n"
                + "  tautlog view recordings/ --rig thin-choker.toml --port 8018%n"
                + "%n",
        header = "The evening view in a browser: season, day, trace.",
        description = {
            "",
            "Serves a page on this computer only, until it is stopped (Ctrl-C). What is found on each",
            "day is worked out in the background; the page says how far it is. Indexes are kept in",
            "FOLDER/tautlog-index, or in the user's cache; they may be deleted. Notes are kept in",
            "FOLDER/notes.jsonl. Recordings are only read, also while they are written.",
            "",
            "--rig and --calibration are offered on the page as what-if switches.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class ViewCommand implements Callable<Integer> {
    private static final int TOKEN_BYTES = 24;

    @Parameters(paramLabel = "FOLDER", description = "The folder with the recordings.")
    private Path folder = Path.of(".");

    @Option(
            names = "--port",
            paramLabel = "N",
            defaultValue = "8017",
            description = "Port; 0 for any. 8017 unless given.")
    private int port;

    @Option(
            names = "--bind",
            paramLabel = "ADDRESS",
            description = "Listen on this address instead of this computer's own; only with the token that is printed."
                    + " What is sent is not encrypted.")
    private @Nullable String bind;

    @Option(names = "--rig", paramLabel = "FILE", description = "Offer another rig than the one stored: what if.")
    private @Nullable Path rig;

    @Option(names = "--calibration", paramLabel = "FILE", description = "Offer another calibration: what if.")
    private @Nullable Path calibration;

    @Option(names = "--units", paramLabel = "UNIT", description = "kN, daN, kgf, t or lbf instead of the rig's.")
    private @Nullable String units;

    @Option(names = "--zone", paramLabel = "ZONE", description = "Time zone of the page instead of this computer's.")
    private @Nullable String zone;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    private final CountDownLatch stopped = new CountDownLatch(1);

    @Override
    public Integer call() throws IOException, UsageException, ConfigException, InterruptedException {
        if (!Files.isDirectory(folder)) {
            throw new UsageException(folder + ": is no folder.\n  Give the folder that the recordings are in.");
        }
        if (port < 0 || port > 65_535) {
            throw new UsageException("--port: " + port + " is no port.\n  Allowed: 0 to 65535.");
        }
        ZoneId at = zone == null ? ZoneId.systemDefault() : LocalTime.zone("--zone", zone);
        Optional<ForceUnit> unit = units == null ? Optional.empty() : Optional.of(ScreenUnit.of("--units", units));
        Optional<InetAddress> address = address();
        Optional<String> token = address.isPresent() ? Optional.of(token()) : Optional.empty();
        Optional<Path> index = IndexFolder.of(folder, userCache());
        try (SeasonWatch watch = new SeasonWatch(folder, at, unit, offer(), index);
                WebServer server = new WebServer(watch, new NoteBook(folder), address, port, token, this::sayBug)) {
            say(server.port(), address, token, index);
            Runtime.getRuntime().addShutdownHook(new Thread(stopped::countDown, "stop"));
            stopped.await();
        }
        return Exits.DONE;
    }

    private void sayBug(Throwable bug) {
        PrintWriter err = spec.commandLine().getErr();
        err.println("This is a bug in tautlog. Please report it with what follows.");
        bug.printStackTrace(err);
        err.flush();
    }

    private Offer offer() throws IOException, UsageException, ConfigException {
        Optional<Rig> other = Optional.empty();
        Optional<CellCalibration> cell = Optional.empty();
        StringBuilder text = new StringBuilder();
        if (rig != null) {
            RigSource source = RigSource.read(rig);
            other = Optional.of(source.rig());
            text.append(source.toml());
        }
        if (calibration != null) {
            CellCalibration read = GivenCalibration.read(calibration);
            cell = Optional.of(read);
            text.append('\f').append(read.toml());
        }
        return new Offer(other, cell, text.toString());
    }

    private Optional<InetAddress> address() throws UsageException {
        if (bind == null) {
            return Optional.empty();
        }
        try {
            return Optional.of(InetAddress.getByName(bind));
        } catch (UnknownHostException e) {
            throw new UsageException("--bind: " + bind + " is no address of this computer.");
        }
    }

    private static String token() {
        byte[] bytes = new byte[TOKEN_BYTES];
        new SecureRandom().nextBytes(bytes);
        return HexFormat.of().formatHex(bytes);
    }

    private static Path userCache() {
        String cache = System.getenv("XDG_CACHE_HOME");
        return cache != null && Path.of(cache).isAbsolute()
                ? Path.of(cache)
                : Path.of(System.getProperty("user.home"), ".cache");
    }

    private void say(int on, Optional<InetAddress> address, Optional<String> token, Optional<Path> index) {
        PrintWriter out = spec.commandLine().getOut();
        PrintWriter err = spec.commandLine().getErr();
        String host = address.map(InetAddress::getHostAddress)
                .map(figures -> figures.contains(":") ? "[" + figures + "]" : figures)
                .orElse("127.0.0.1");
        out.println("http://" + host + ":" + on + "/"
                + token.map(secret -> "?token=" + secret).orElse(""));
        out.flush();
        if (address.isPresent()) {
            err.println("Whoever has this address with its token can read the recordings and add notes. What is sent is"
                    + " not encrypted.");
        }
        if (index.isEmpty()) {
            err.println("Neither the folder nor the user's cache can be written: the index lasts as long as this"
                    + " program.");
        }
        err.println("Stop with Ctrl-C.");
        err.flush();
    }
}

package tautlog.logger.simulate;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import tautlog.logger.pty.PseudoTerminal;

/**
 * Plays a scenario on a pseudo-terminal: waits for a logger to open it, sends at the wanted pace, listens to the beacon,
 * hangs up when everything was taken, writes the truth.
 */
public final class Simulator {
    private static final Duration WAIT_FOR_LOGGER = Duration.ofMinutes(10);
    private static final Duration WAIT_UNTIL_TAKEN = Duration.ofSeconds(30);
    /** A reader that has just opened the port may still be setting it up, and throw away what comes meanwhile. */
    private static final long SETTLE_MILLIS = 300;

    private final Request request;
    private final PrintWriter words;
    private final boolean progress;

    /**
     * @param portLink where the port is linked
     * @param pace simulated seconds per second, 1 to 1000; a slow reader or computer makes it less
     * @param truth where the truth is written, over what is there
     */
    public record Request(Scenario scenario, Path portLink, int pace, long seed, Path truth) {
        /** @throws IllegalArgumentException if the pace is out of its range */
        public Request {
            if (pace < 1 || pace > 1_000) {
                throw new IllegalArgumentException("pace must be 1 to 1000, was " + pace);
            }
        }

        /** Where the truth goes when nobody says: beside the port's link. */
        public static Path truthBeside(Path portLink) {
            return portLink.resolveSibling(portLink.getFileName() + ".truth.json");
        }
    }

    /**
     * @param words takes what a person should know
     * @param progress true to keep a line of progress on a terminal
     */
    public Simulator(Request request, PrintWriter words, boolean progress) {
        this.request = request;
        this.words = words;
        this.progress = progress;
    }

    /**
     * Plays.
     *
     * @return the truth; empty when nobody opened the port, nothing was played then
     * @throws IOException if the port cannot be made or the truth not be written
     */
    public Optional<Truth> run() throws IOException, InterruptedException {
        PseudoTerminal terminal = PseudoTerminal.open();
        Thread hangUp = new Thread(terminal::close, "hang up"); // Ctrl-C leaves no dead link behind
        Runtime.getRuntime().addShutdownHook(hangUp);
        try (terminal) {
            terminal.linkAt(request.portLink());
            say("port " + request.portLink() + " (" + terminal.portName() + "), scenario "
                    + request.scenario().id() + ", waiting for a logger to open it");
            if (!terminal.waitForReader(WAIT_FOR_LOGGER)) {
                say("nobody opened " + request.portLink() + " for " + WAIT_FOR_LOGGER.toMinutes()
                        + " minutes. Start a logger whose [instrument] port is that path.");
                return Optional.empty();
            }
            Thread.sleep(SETTLE_MILLIS);
            return Optional.of(play(terminal));
        } finally {
            Runtime.getRuntime().removeShutdownHook(hangUp);
        }
    }

    private Truth play(PseudoTerminal terminal) throws IOException, InterruptedException {
        PacedPort port = new PacedPort(terminal, request.pace(), progress ? words : null);
        Truth truth = playInto(port);
        boolean taken = terminal.waitUntilTaken(WAIT_UNTIL_TAKEN);
        port.listen(truth.durationSeconds());
        terminal.close();
        truth.beacons.addAll(port.beacons());
        truth.beaconFramesRejected = port.beaconFramesRejected();
        truth.bytesUnheard = port.bytesUnheard();
        Files.writeString(request.truth(), truth.toJson());
        if (!taken) {
            say("the logger did not take the last bytes");
        }
        say("done: " + Math.round(truth.durationSeconds()) + " s simulated, " + truth.samplesSent()
                + " samples sent; what really happened is in " + request.truth());
        return truth;
    }

    private Truth playInto(PacedPort port) throws IOException, InterruptedException {
        try {
            return Simulation.play(request.scenario(), request.seed(), port);
        } catch (PacedPort.Broken broken) {
            throw broken.reason();
        } catch (PacedPort.Interrupted stopped) {
            throw stopped.reason();
        }
    }

    private void say(String line) {
        words.println("simulate: " + line);
        words.flush();
    }
}

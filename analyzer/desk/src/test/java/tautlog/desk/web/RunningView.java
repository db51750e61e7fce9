package tautlog.desk.web;

import java.io.IOException;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import tautlog.desk.notes.NoteBook;
import tautlog.desk.season.Offer;
import tautlog.desk.season.SeasonWatch;

/** The evening view of a folder, on a free port. */
final class RunningView implements AutoCloseable {
    final List<Throwable> bugs = new CopyOnWriteArrayList<>();
    final SeasonWatch watch;
    private final WebServer server;

    private RunningView(Path folder, Offer offer, Optional<String> token) throws IOException {
        watch = new SeasonWatch(
                folder, ZoneId.of("UTC"), Optional.empty(), offer, Optional.of(folder.resolve("index")));
        server = new WebServer(
                watch,
                new NoteBook(folder),
                token.isPresent()
                        ? Optional.of(java.net.InetAddress.getByAddress(new byte[] {127, 0, 0, 1}))
                        : Optional.empty(),
                0,
                token,
                bugs::add);
    }

    static RunningView of(Path folder) throws IOException {
        return new RunningView(folder, Offer.NONE, Optional.empty());
    }

    /** With another rig or calibration to switch to. */
    static RunningView offering(Path folder, Offer offer) throws IOException {
        return new RunningView(folder, offer, Optional.empty());
    }

    static RunningView withToken(Path folder, String token) throws IOException {
        return new RunningView(folder, Offer.NONE, Optional.of(token));
    }

    /** Waits until all is read and worked out. */
    RunningView done() throws InterruptedException {
        for (int i = 0; i < 1_200 && !watch.progress().isDone(); i++) {
            Thread.sleep(50);
        }
        if (!watch.progress().isDone()) {
            throw new IllegalStateException("not done after a minute: " + watch.progress());
        }
        return this;
    }

    int port() {
        return server.port();
    }

    String address() {
        return "http://127.0.0.1:" + port();
    }

    @Override
    public void close() {
        server.close();
        watch.close();
    }
}

package tautlog.logger.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.jspecify.annotations.Nullable;

/** The network between the logger and a server: can be cut, and can delay the server's answers. */
final class Network implements AutoCloseable {
    private final int port;
    private final int server;
    private final Queue<Socket> open = new ConcurrentLinkedQueue<>();
    private volatile long delayMillis;
    private volatile @Nullable ServerSocket listening;

    Network(int port, int server) {
        this.port = port;
        this.server = server;
    }

    /** Connections are taken from now on. */
    void connect() throws IOException {
        ServerSocket socket = new ServerSocket();
        socket.setReuseAddress(true);
        socket.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), port));
        listening = socket;
        daemon(() -> accept(socket));
    }

    /** All connections end, new ones are refused. */
    void cut() throws IOException {
        ServerSocket socket = listening;
        listening = null;
        if (socket != null) {
            socket.close();
        }
        Socket end;
        while ((end = open.poll()) != null) {
            end.close();
        }
    }

    /** What the server says arrives so much later. */
    void delay(long millis) {
        delayMillis = millis;
    }

    private void accept(ServerSocket socket) {
        while (!socket.isClosed()) {
            try {
                join(socket.accept());
            } catch (IOException cut) {
                continue; // the network is cut
            }
        }
    }

    private void join(Socket logger) throws IOException {
        open.add(logger);
        try {
            Socket peer = new Socket(InetAddress.getLoopbackAddress(), server);
            open.add(peer);
            daemon(() -> pump(logger, peer, Way.TO_SERVER));
            daemon(() -> pump(peer, logger, Way.FROM_SERVER));
        } catch (IOException noServer) {
            logger.close();
        }
    }

    private enum Way {
        TO_SERVER,
        FROM_SERVER
    }

    private void pump(Socket from, Socket to, Way way) {
        byte[] some = new byte[64 * 1024];
        try (from;
                to;
                InputStream in = from.getInputStream();
                OutputStream out = to.getOutputStream()) {
            for (int n = in.read(some); n >= 0; n = in.read(some)) {
                if (way == Way.FROM_SERVER && delayMillis > 0) {
                    Thread.sleep(delayMillis);
                }
                out.write(some, 0, n);
            }
        } catch (IOException cut) {
            return;
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    private static void daemon(Runnable work) {
        Thread thread = new Thread(work, "test network");
        thread.setDaemon(true);
        thread.start();
    }

    @Override
    public void close() throws IOException {
        cut();
    }
}

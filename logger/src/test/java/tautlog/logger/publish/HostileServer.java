package tautlog.logger.publish;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.concurrent.atomic.AtomicLong;

/** A server that answers as it likes. */
public final class HostileServer implements AutoCloseable {
    private final ServerSocket socket;
    private final AtomicLong sentBytes = new AtomicLong();

    /** What it says to whoever connects. */
    public interface Says {
        void to(InputStream in, OutputStream out) throws IOException;
    }

    public HostileServer(Says says) throws IOException {
        socket = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        daemon(() -> accept(says));
    }

    public int port() {
        return socket.getLocalPort();
    }

    /** How many bytes somebody took. */
    public long sentBytes() {
        return sentBytes.get();
    }

    private void accept(Says says) {
        while (!socket.isClosed()) {
            try {
                Socket victim = socket.accept();
                daemon(() -> talk(says, victim));
            } catch (IOException closed) {
                return;
            }
        }
    }

    private void talk(Says says, Socket victim) {
        try (victim) {
            OutputStream out = victim.getOutputStream();
            says.to(victim.getInputStream(), new OutputStream() {
                @Override
                public void write(int b) throws IOException {
                    out.write(b);
                    sentBytes.incrementAndGet();
                }

                @Override
                public void write(byte[] bytes, int from, int n) throws IOException {
                    out.write(bytes, from, n);
                    sentBytes.addAndGet(n);
                }
            });
        } catch (IOException gone) {
            return; // hung up on
        }
    }

    private static void daemon(Runnable work) {
        Thread thread = new Thread(work, "hostile server");
        thread.setDaemon(true);
        thread.start();
    }

    @Override
    public void close() throws IOException {
        socket.close();
    }
}

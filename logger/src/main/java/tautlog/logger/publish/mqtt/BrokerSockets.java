package tautlog.logger.publish.mqtt;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.util.Optional;
import javax.net.SocketFactory;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tautlog.logger.publish.Trust;

/** Makes the MQTT library's sockets, and closes the last one under its feet when it hangs. */
final class BrokerSockets extends SocketFactory {
    private static final Logger LOG = LoggerFactory.getLogger(BrokerSockets.class);

    private final Optional<Trust> trust;
    private volatile @Nullable BrokerSocket last;

    BrokerSockets(Optional<Trust> trust) {
        this.trust = trust;
    }

    @Override
    public Socket createSocket() {
        BrokerSocket made = new BrokerSocket(trust);
        last = made;
        return made;
    }

    /** Frees whoever reads from it or writes to it. */
    void closeLast() {
        BrokerSocket open = last;
        if (open != null) {
            try {
                open.close();
            } catch (IOException gone) {
                LOG.debug("closing the broker's socket: {}", gone.getMessage());
            }
        }
    }

    @Override
    public Socket createSocket(String host, int port) {
        throw new UnsupportedOperationException("connected later");
    }

    @Override
    public Socket createSocket(String host, int port, InetAddress local, int localPort) {
        throw new UnsupportedOperationException("connected later");
    }

    @Override
    public Socket createSocket(InetAddress host, int port) {
        throw new UnsupportedOperationException("connected later");
    }

    @Override
    public Socket createSocket(InetAddress host, int port, InetAddress local, int localPort) {
        throw new UnsupportedOperationException("connected later");
    }
}

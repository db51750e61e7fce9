package tautlog.logger.publish.mqtt;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetSocketAddress;
import java.net.Proxy;
import java.net.Socket;
import java.net.SocketAddress;
import java.net.SocketException;
import java.util.Optional;
import javax.net.ssl.SSLParameters;
import javax.net.ssl.SSLSocket;
import org.jspecify.annotations.Nullable;
import tautlog.logger.publish.Trust;

/**
 * A connection to the broker, with TLS when there is {@link Trust}: the certificate must be trusted and be that of the host that is
 * named in the configuration. What comes in is bounded.
 */
@SuppressWarnings("UnsynchronizedOverridesSynchronized") // closing must not wait for whoever hangs in another call
final class BrokerSocket extends Socket {
    private final Socket plain = new Socket(Proxy.NO_PROXY);
    private final Optional<Trust> trust;
    private volatile Socket used = plain;
    private @Nullable InputStream bounded;

    /** @param trust empty for a connection without TLS */
    BrokerSocket(Optional<Trust> trust) {
        this.trust = trust;
    }

    @Override
    public void connect(SocketAddress endpoint, int timeoutMillis) throws IOException {
        plain.connect(endpoint, timeoutMillis);
        plain.setTcpNoDelay(true);
        if (trust.isPresent()) {
            secure(trust.get(), (InetSocketAddress) endpoint, timeoutMillis);
        }
    }

    private void secure(Trust trusted, InetSocketAddress endpoint, int timeoutMillis) throws IOException {
        plain.setSoTimeout(timeoutMillis);
        SSLSocket secure = (SSLSocket) trusted.context()
                .getSocketFactory()
                .createSocket(plain, endpoint.getHostString(), endpoint.getPort(), true);
        SSLParameters parameters = secure.getSSLParameters();
        parameters.setEndpointIdentificationAlgorithm("HTTPS"); // the host's name must stand in the certificate
        secure.setSSLParameters(parameters);
        secure.startHandshake();
        secure.setSoTimeout(0);
        used = secure;
    }

    @Override
    public InputStream getInputStream() throws IOException {
        InputStream known = bounded;
        if (known == null) {
            known = new PacketBound(used.getInputStream());
            bounded = known;
        }
        return known;
    }

    @Override
    public OutputStream getOutputStream() throws IOException {
        return used.getOutputStream();
    }

    @Override
    public void setSoTimeout(int millis) throws SocketException {
        used.setSoTimeout(millis);
    }

    @Override
    public boolean isConnected() {
        return used.isConnected();
    }

    @Override
    public boolean isClosed() {
        return plain.isClosed();
    }

    /** At once, whatever is being read or written: an orderly goodbye might wait for a peer that reads nothing. */
    @Override
    public void close() throws IOException {
        plain.close();
    }
}

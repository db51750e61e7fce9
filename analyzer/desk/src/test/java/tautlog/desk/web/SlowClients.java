package tautlog.desk.web;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** Connections that begin a request and never end it. */
final class SlowClients implements AutoCloseable {
    private final List<Socket> sockets = new ArrayList<>();

    private SlowClients() {}

    static SlowClients of(int port, int n) throws IOException {
        SlowClients clients = new SlowClients();
        for (int i = 0; i < n; i++) {
            Socket socket = new Socket(InetAddress.getByAddress(new byte[] {127, 0, 0, 1}), port);
            socket.getOutputStream().write("GET / HTT".getBytes(StandardCharsets.US_ASCII));
            socket.getOutputStream().flush();
            clients.sockets.add(socket);
        }
        return clients;
    }

    int size() {
        return sockets.size();
    }

    @Override
    public void close() throws IOException {
        for (Socket socket : sockets) {
            socket.close();
        }
    }
}

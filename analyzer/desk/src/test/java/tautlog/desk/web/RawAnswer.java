package tautlog.desk.web;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/**
 * What came back on a socket of its own.
 *
 * @param status 0 when the connection was closed without an answer
 * @param head in lower case
 */
record RawAnswer(int status, String head, String body) {
    boolean isRefused() {
        return status == 0 || status >= 400;
    }

    static RawAnswer to(int port, String start, String body, String... headers) throws IOException {
        try (Socket socket = new Socket(InetAddress.getByAddress(new byte[] {127, 0, 0, 1}), port)) {
            socket.setSoTimeout(20_000);
            StringBuilder request = new StringBuilder(start).append("\r\n");
            for (String header : headers) {
                request.append(header).append("\r\n");
            }
            byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
            if (start.startsWith("POST")
                    && bytes.length + body.length() >= 0
                    && !request.toString().contains("Content-Length")) {
                request.append("Content-Length: ").append(bytes.length).append("\r\n");
            }
            request.append("Connection: close\r\n\r\n");
            try {
                socket.getOutputStream().write(request.toString().getBytes(StandardCharsets.ISO_8859_1));
                socket.getOutputStream().write(bytes);
                socket.getOutputStream().flush();
                return read(socket.getInputStream());
            } catch (java.net.SocketException closed) {
                return new RawAnswer(0, "", "");
            }
        }
    }

    private static RawAnswer read(InputStream in) throws IOException {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        try {
            in.transferTo(all);
        } catch (java.net.SocketException closed) {
            all.flush(); // what came before counts
        }
        String text = all.toString(StandardCharsets.UTF_8);
        int end = text.indexOf("\r\n\r\n");
        if (end < 0) {
            return new RawAnswer(0, "", text);
        }
        String head = text.substring(0, end);
        return new RawAnswer(
                Integer.parseInt(head.substring(9, 12)), head.toLowerCase(Locale.ROOT), text.substring(end + 4));
    }
}

package tautlog.logger.config;

import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import tautlog.config.ConfigTable;
import tautlog.config.Reading;
import tautlog.config.Refusal;

/** Reads {@code [publish.mqtt]} and {@code [publish.influx]}. */
final class PublishSection {
    private final ConfigTable publish;
    private final Reading<Path> path;

    private PublishSection(ConfigTable publish, Reading<Path> path) {
        this.publish = publish;
        this.path = path;
    }

    /** @param path reads a file's name, from the configuration's folder */
    static PublishChoice read(ConfigTable root, Reading<Path> path) {
        Optional<ConfigTable> table = root.table("publish");
        if (table.isEmpty()) {
            return PublishChoice.NONE;
        }
        PublishSection section = new PublishSection(table.get(), path);
        return new PublishChoice(section.mqtt(), section.influx());
    }

    private Optional<PublishChoice.Mqtt> mqtt() {
        return publish.table("mqtt").flatMap(table -> {
            Optional<String> url = table.required("url", url(List.of("tcp", "ssl"), "ssl://broker.example:8883", true));
            Optional<String> user = table.optional("user", Reading.text());
            Optional<SecretFile> password =
                    table.optional("password_file", path).map(SecretFile::new);
            if (password.isPresent() && user.isEmpty()) {
                table.problem("password_file", "stands without a user", "Write user = \"…\" too.");
            }
            Optional<Path> ca = table.optional("ca_file", path);
            return url.map(to -> new PublishChoice.Mqtt(to, user, password, ca));
        });
    }

    private Optional<PublishChoice.Influx> influx() {
        return publish.table("influx").flatMap(table -> {
            Optional<String> url =
                    table.required("url", url(List.of("http", "https"), "https://series.example:8086", false));
            Optional<String> org = table.required("org", Reading.text());
            Optional<String> bucket = table.required("bucket", Reading.text());
            Optional<SecretFile> token = table.optional("token_file", path).map(SecretFile::new);
            Optional<Path> ca = table.optional("ca_file", path);
            return url.flatMap(
                    to -> org.flatMap(of -> bucket.map(into -> new PublishChoice.Influx(to, of, into, token, ca))));
        });
    }

    private static Reading<String> url(List<String> schemes, String example, boolean needsPort) {
        String next = "Write it like \"" + example + "\"; begins with " + String.join(":// or ", schemes)
                + "://; user and password have keys of their own.";
        return new Reading<>("a server's address (\"" + example + "\")", written -> {
            try {
                URI uri = new URI(written instanceof String text ? text : "");
                boolean port = needsPort ? uri.getPort() > 0 : uri.getPort() != 0;
                if (schemes.contains(uri.getScheme())
                        && uri.getHost() != null
                        && port
                        && uri.getUserInfo() == null
                        && uri.getQuery() == null) {
                    return uri.toString();
                }
            } catch (URISyntaxException noAddress) {
                throw new Refusal("is not such an address", next); // what is written may hold a password: not shown
            }
            throw new Refusal("is not such an address", next);
        });
    }
}

package tautlog.logger.config;

import java.nio.file.Path;
import java.util.Optional;

/**
 * Where seconds and findings are published; both off unless written.
 *
 * @param mqtt a broker
 * @param influx a time-series server that takes InfluxDB's writes
 */
public record PublishChoice(Optional<Mqtt> mqtt, Optional<Influx> influx) {
    public static final PublishChoice NONE = new PublishChoice(Optional.empty(), Optional.empty());

    /**
     * An MQTT broker.
     *
     * @param url {@code tcp://host:port} or {@code ssl://host:port}
     * @param password read at each connect
     * @param caFile certificates (PEM) that are trusted instead of the system's
     */
    public record Mqtt(String url, Optional<String> user, Optional<SecretFile> password, Optional<Path> caFile) {}

    /**
     * A time-series server.
     *
     * @param url {@code http://…} or {@code https://…}
     * @param token read at each connect
     * @param caFile as in {@link Mqtt}
     */
    public record Influx(String url, String org, String bucket, Optional<SecretFile> token, Optional<Path> caFile) {}
}

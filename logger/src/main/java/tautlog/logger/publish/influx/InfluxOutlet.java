package tautlog.logger.publish.influx;

import com.influxdb.client.InfluxDBClient;
import com.influxdb.client.InfluxDBClientFactory;
import com.influxdb.client.InfluxDBClientOptions;
import com.influxdb.exceptions.InfluxException;
import java.io.IOException;
import java.net.Proxy;
import java.time.Duration;
import java.util.List;
import okhttp3.OkHttpClient;
import org.jspecify.annotations.Nullable;
import tautlog.logger.config.PublishChoice;
import tautlog.logger.publish.Announcement;
import tautlog.logger.publish.Away;
import tautlog.logger.publish.Item;
import tautlog.logger.publish.Outlet;
import tautlog.logger.publish.Refused;
import tautlog.logger.publish.Trust;

/** Writes points, one blocking request a portion. Keeps nothing: the cursor in the recording is all there is. */
public final class InfluxOutlet implements Outlet {
    private static final int LONGEST_WORDS = 300;

    private final PublishChoice.Influx choice;
    private final Points points;
    private final Duration answer;
    private String token = "";
    private ReplyBound bound = new ReplyBound();
    private @Nullable InfluxDBClient client;

    public InfluxOutlet(PublishChoice.Influx choice, String winch, long answerMillis) {
        this.choice = choice;
        points = new Points(winch);
        answer = Duration.ofMillis(answerMillis);
    }

    @Override
    public void deliver(List<Item> items) throws Away, Refused {
        try {
            client().getWriteApiBlocking()
                    .writePoints(items.stream().map(points::of).toList());
        } catch (InfluxException refusal) {
            close();
            throw judged(refusal);
        }
    }

    /** This server keeps no such. */
    @Override
    public Announced announce(Announcement news) {
        return Announced.NOT_KEPT;
    }

    private InfluxDBClient client() throws Away {
        InfluxDBClient open = client;
        if (open == null) {
            open = connect();
            client = open;
        }
        return open;
    }

    private InfluxDBClient connect() throws Away {
        bound = new ReplyBound();
        OkHttpClient.Builder http = new OkHttpClient.Builder()
                .proxy(Proxy.NO_PROXY)
                .followRedirects(false)
                .followSslRedirects(false)
                .callTimeout(answer)
                .connectTimeout(answer)
                .readTimeout(answer)
                .writeTimeout(answer)
                // asked for plainly, an answer that is packed all the same is not unpacked in memory
                .addInterceptor(chain -> chain.proceed(chain.request()
                        .newBuilder()
                        .header("Accept-Encoding", "identity")
                        .build()))
                .addNetworkInterceptor(bound);
        if (choice.url().startsWith("https:")) {
            Trust trust = Trust.of(choice.caFile());
            http.sslSocketFactory(trust.context().getSocketFactory(), trust.manager());
        }
        InfluxDBClientOptions.Builder options = InfluxDBClientOptions.builder()
                .url(choice.url())
                .org(choice.org())
                .bucket(choice.bucket())
                .okHttpClient(http);
        if (choice.token().isPresent()) {
            try {
                token = choice.token().get().read();
                options.authenticateToken(token.toCharArray());
            } catch (IOException unusable) {
                throw new Away("token_file: " + unusable.getMessage());
            }
        }
        return InfluxDBClientFactory.create(options.build());
    }

    /** Whether the server will take it later, or never. */
    private Away judged(InfluxException refusal) throws Refused {
        int status = refusal.status();
        String words = words(refusal);
        return switch (status) {
            case 400, 413, 422 -> throw new Refused(status + " " + words);
            case 401, 403 -> new Away(choice.url() + ": " + status + ", look at token_file: " + words);
            case 404 -> new Away(choice.url() + ": 404, look at url, org and bucket: " + words);
            default ->
                new Away(choice.url() + ": " + (status == 0 ? "" : status + " ") + words, bound.retryAfterMillis());
        };
    }

    /** What the server says, short, and without the token: one in between may repeat what it was sent. */
    private String words(InfluxException refusal) {
        String words = String.valueOf(refusal.getMessage());
        words = (token.isEmpty() ? words : words.replace(token, "(token)")).replaceAll("\\s+", " ");
        return words.length() > LONGEST_WORDS ? words.substring(0, LONGEST_WORDS) : words;
    }

    @Override
    public void close() {
        InfluxDBClient open = client;
        client = null;
        if (open != null) {
            open.close();
        }
    }
}

package tautlog.logger.publish.mqtt;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.eclipse.paho.client.mqttv3.IMqttToken;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tautlog.logger.config.PublishChoice;
import tautlog.logger.publish.Announcement;
import tautlog.logger.publish.Away;
import tautlog.logger.publish.Item;
import tautlog.logger.publish.Outlet;
import tautlog.logger.publish.Trust;
import tautlog.recording.RecordingId;

/**
 * Publishes below {@code tautlog/1/<winch>/}, QoS 1. A connection that is in doubt is thrown away and made anew: nothing of a session
 * is kept, the cursor in the recording is all there is.
 */
public final class MqttOutlet implements Outlet {
    private static final Logger LOG = LoggerFactory.getLogger(MqttOutlet.class);
    private static final int QOS = 1;
    /** Above the greatest portion: seconds, findings and meters. */
    private static final int MOST_IN_FLIGHT = 1_000;

    private static final long CLOSING_MILLIS = 5_000;

    private final PublishChoice.Mqtt choice;
    private final String winch;
    private final String topic;
    private final long answerMillis;
    private final String clientId = "tautlog-" + RecordingId.random();
    private @Nullable MqttAsyncClient client;
    private @Nullable BrokerSockets sockets;

    public MqttOutlet(PublishChoice.Mqtt choice, String winch, long answerMillis) {
        this.choice = choice;
        this.winch = Messages.level(winch);
        this.topic = "tautlog/1/" + this.winch + "/";
        this.answerMillis = answerMillis;
    }

    @Override
    public void deliver(List<Item> items) throws Away, InterruptedException {
        sendAll(sender -> {
            for (Item item : items) {
                send(sender, item);
            }
        });
    }

    private void send(Sender sender, Item item) throws MqttException {
        if (item instanceof Item.OfSecond second) {
            sender.send("second", Messages.senml(winch, second), false);
        } else if (item instanceof Item.OfFinding finding) {
            sender.send("finding", Messages.finding(finding), false);
        } else if (item instanceof Item.OfMeters meters) {
            sender.send("hours", Messages.meters(meters), true);
        }
    }

    @Override
    public Announced announce(Announcement news) throws Away, InterruptedException {
        String subject = news.subject() == Announcement.Subject.STATUS ? "status" : "link";
        sendAll(sender -> sender.send(subject, news.json(), true));
        return Announced.ACKNOWLEDGED;
    }

    private interface Sender {
        void send(String subject, String payload, boolean retained) throws MqttException;
    }

    private interface Sending {
        void over(Sender sender) throws MqttException;
    }

    /** Returns when all of it is acknowledged. */
    private void sendAll(Sending sending) throws Away, InterruptedException {
        try {
            MqttAsyncClient open = connected();
            List<IMqttToken> out = new ArrayList<>();
            sending.over((subject, payload, retained) ->
                    out.add(open.publish(topic + subject, payload.getBytes(StandardCharsets.UTF_8), QOS, retained)));
            await(out);
        } catch (MqttException refusal) {
            throw away(refusal);
        } catch (InterruptedException stopped) {
            close();
            throw stopped;
        }
    }

    private void await(List<IMqttToken> out) throws MqttException, InterruptedException {
        long end = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(answerMillis);
        for (IMqttToken token : out) {
            if (Thread.interrupted()) {
                throw new InterruptedException();
            }
            token.waitForCompletion(Math.max(1, TimeUnit.NANOSECONDS.toMillis(end - System.nanoTime())));
        }
    }

    private MqttAsyncClient connected() throws Away, MqttException, InterruptedException {
        MqttAsyncClient open = client;
        if (open != null && open.isConnected()) {
            return open;
        }
        close();
        boolean secure = choice.url().startsWith("ssl:");
        BrokerSockets made = new BrokerSockets(secure ? Optional.of(Trust.of(choice.caFile())) : Optional.empty());
        sockets = made;
        String address = "tcp" + choice.url().substring(choice.url().indexOf(':')); // TLS is our own socket's affair
        MqttAsyncClient fresh = new MqttAsyncClient(address, clientId, new MemoryPersistence());
        client = fresh;
        await(List.of(fresh.connect(options(made))));
        await(List.of(fresh.publish(topic + "online", "true".getBytes(StandardCharsets.UTF_8), QOS, true)));
        return fresh;
    }

    private MqttConnectOptions options(BrokerSockets made) throws Away {
        MqttConnectOptions options = new MqttConnectOptions();
        options.setCleanSession(true);
        options.setAutomaticReconnect(false);
        options.setMaxInflight(MOST_IN_FLIGHT);
        options.setConnectionTimeout((int) Math.max(1, answerMillis / 2_000));
        options.setSocketFactory(made);
        options.setWill(topic + "online", "false".getBytes(StandardCharsets.UTF_8), QOS, true);
        choice.user().ifPresent(options::setUserName);
        if (choice.password().isPresent()) {
            try {
                options.setPassword(choice.password().get().read().toCharArray());
            } catch (IOException unusable) {
                throw new Away("password_file: " + unusable.getMessage());
            }
        }
        return options;
    }

    private Away away(MqttException refusal) {
        close();
        return new Away(choice.url() + ": " + words(refusal));
    }

    private static String words(MqttException refusal) {
        return switch (refusal.getReasonCode()) {
            case MqttException.REASON_CODE_FAILED_AUTHENTICATION, MqttException.REASON_CODE_NOT_AUTHORIZED ->
                "the broker lets nobody in with this user and password; look at user and password_file";
            case MqttException.REASON_CODE_CLIENT_TIMEOUT -> "no answer in time";
            default -> cause(refusal);
        };
    }

    /** The innermost cause, short: it holds nothing of what was sent. */
    private static String cause(Throwable thrown) {
        Throwable innermost = thrown;
        for (int depth = 0; depth < 10; depth++) {
            Throwable cause = innermost.getCause();
            if (cause == null) {
                break;
            }
            innermost = cause;
        }
        String words = innermost.getClass().getSimpleName() + ": " + innermost.getMessage();
        return words.length() > 300 ? words.substring(0, 300) : words;
    }

    /** Throws the connection away, on a thread of its own, as the library may wait for a peer in places. */
    @Override
    public void close() {
        MqttAsyncClient open = client;
        BrokerSockets made = sockets;
        client = null;
        sockets = null;
        if (open == null) {
            return;
        }
        Thread closing = new Thread(() -> discard(open, made), "mqtt closing");
        closing.setDaemon(true);
        closing.start();
        try {
            closing.join(CLOSING_MILLIS);
        } catch (InterruptedException hurried) {
            Thread.currentThread().interrupt();
        }
    }

    private static void discard(MqttAsyncClient open, @Nullable BrokerSockets made) {
        try {
            if (made != null) {
                made.closeLast();
            }
            open.disconnectForcibly(1, 1, false);
            open.close(true);
        } catch (MqttException gone) {
            LOG.debug("closing the broker's connection: {}", gone.getMessage());
        }
    }
}

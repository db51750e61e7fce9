package tautlog.logger.cli;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import org.jspecify.annotations.Nullable;

/** Somebody who listens to a broker and drops repeats by position. */
final class Consumer implements AutoCloseable {
    private final String url;
    private final Set<String> positions = Collections.synchronizedSet(new LinkedHashSet<>());
    private volatile int messages;
    private @Nullable MqttClient client;

    Consumer(int port) {
        url = "tcp://127.0.0.1:" + port;
    }

    /** Returns when the broker has taken the subscription. */
    void subscribe() throws MqttException {
        close();
        MqttClient fresh = new MqttClient(url, MqttClient.generateClientId(), new MemoryPersistence());
        fresh.setTimeToWait(20_000);
        MqttConnectOptions options = new MqttConnectOptions();
        options.setMaxInflight(10_000);
        fresh.connect(options);
        client = fresh;
        String[] topics = {"tautlog/1/+/second", "tautlog/1/+/finding"};
        fresh.subscribe(topics, new int[] {1, 1}, new org.eclipse.paho.client.mqttv3.IMqttMessageListener[] {
            (topic, message) -> take(new String(message.getPayload(), StandardCharsets.UTF_8)),
            (topic, message) -> take(new String(message.getPayload(), StandardCharsets.UTF_8))
        });
    }

    private synchronized void take(String payload) {
        messages++;
        positions.add(position(JsonParser.parseString(payload)));
    }

    private static String position(JsonElement json) {
        if (json.isJsonObject()) {
            return json.getAsJsonObject().get("position").getAsString();
        }
        JsonObject last =
                json.getAsJsonArray().get(json.getAsJsonArray().size() - 1).getAsJsonObject();
        return last.get("vs").getAsString();
    }

    /** With repeats. */
    int messages() {
        return messages;
    }

    /** Without repeats, in the order of their first arrival, of one stream: {@code s} or {@code f}. */
    List<String> positions(String stream) {
        synchronized (positions) {
            List<String> found = new ArrayList<>(positions);
            found.removeIf(position -> !position.contains("/" + stream + "/"));
            return found;
        }
    }

    @Override
    public void close() {
        MqttClient open = client;
        client = null;
        if (open != null) {
            try {
                open.disconnectForcibly(1, 1, false);
                open.close(true);
            } catch (MqttException gone) {
                return; // so it is closed
            }
        }
    }
}

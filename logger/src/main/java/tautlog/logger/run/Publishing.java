package tautlog.logger.run;

import com.google.gson.JsonObject;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Supplier;
import tautlog.logger.config.Installation;
import tautlog.logger.config.PublishChoice;
import tautlog.logger.publish.CommitSignal;
import tautlog.logger.publish.Outlet;
import tautlog.logger.publish.Patience;
import tautlog.logger.publish.Publisher;
import tautlog.logger.publish.PublisherState;
import tautlog.logger.publish.influx.InfluxOutlet;
import tautlog.logger.publish.mqtt.MqttOutlet;
import tautlog.logger.recorder.RecordingFiles;

/** The publishers that the configuration asks for, each on a daemon thread of its own. */
final class Publishing {
    /** For tests: all waits are divided by it. */
    private static final String HURRY = "tautlog.publish.hurry";
    /** Chosen: what is in flight at once when a broker goes. */
    private static final int MQTT_MOST = 50;

    private static final int INFLUX_MOST = 250; // seconds, and as many findings: 500 and their meters at the most
    private static final long STOP_MILLIS = 1_000;

    private final CommitSignal signal = new CommitSignal();
    private final Map<String, Publisher> publishers = new TreeMap<>();
    private final List<Thread> threads = new ArrayList<>();

    Publishing(Installation installation, RecordingFiles files, InstantSource clock, Supplier<JsonObject> status) {
        PublishChoice choice = installation.config().publish();
        String winch = installation.rig().winch();
        Patience patience = patience();
        choice.mqtt()
                .ifPresent(mqtt -> add(
                        new Publisher.Plan(
                                "mqtt",
                                files,
                                installation.config().recordings(),
                                MQTT_MOST,
                                signal,
                                patience,
                                clock,
                                status),
                        () -> new MqttOutlet(mqtt, winch, patience.answer())));
        choice.influx()
                .ifPresent(influx -> add(
                        new Publisher.Plan(
                                "influx",
                                files,
                                installation.config().recordings(),
                                INFLUX_MOST,
                                signal,
                                patience,
                                clock,
                                status),
                        () -> new InfluxOutlet(influx, winch, patience.answer())));
    }

    private static Patience patience() {
        String hurry = System.getProperty(HURRY, "1");
        return hurry.equals("1") ? Patience.USUAL : Patience.hurried(Double.parseDouble(hurry));
    }

    private void add(Publisher.Plan plan, Supplier<Outlet> maker) {
        publishers.put(plan.name(), new Publisher(plan, maker));
    }

    CommitSignal signal() {
        return signal;
    }

    void start() {
        publishers.forEach((name, publisher) -> {
            Thread thread = new Thread(publisher, "publish " + name);
            thread.setDaemon(true);
            threads.add(thread);
            thread.start();
        });
    }

    /** Asks them to end and waits for a moment; what is not published waits in the recordings for the next start. */
    void stop() throws InterruptedException {
        publishers.values().forEach(Publisher::stop);
        threads.forEach(Thread::interrupt);
        for (Thread thread : threads) {
            thread.join(STOP_MILLIS);
        }
    }

    /** By the outlet's name; off where none is configured. */
    Map<String, PublisherState> states() {
        Map<String, PublisherState> states =
                new TreeMap<>(Map.of("mqtt", PublisherState.OFF, "influx", PublisherState.OFF));
        publishers.forEach((name, publisher) -> states.put(name, publisher.state()));
        return states;
    }
}

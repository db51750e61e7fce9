package tautlog.logger.port;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** A listing that a test plugs devices into and out of. */
public final class ListedPorts implements PortListing {
    private final Map<String, Optional<UsbIdentity>> ports = new TreeMap<>();

    /** @param identity as it is written; empty for what is no USB device */
    public synchronized ListedPorts plug(String path, String identity) {
        ports.put(path, UsbIdentity.read(identity));
        return this;
    }

    public synchronized ListedPorts unplug(String path) {
        ports.remove(path);
        return this;
    }

    @Override
    public synchronized List<ListedPort> now() {
        return ports.entrySet().stream()
                .map(port -> new ListedPort(port.getKey(), "", "", port.getValue()))
                .toList();
    }
}

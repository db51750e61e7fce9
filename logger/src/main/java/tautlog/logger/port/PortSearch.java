package tautlog.logger.port;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tautlog.logger.port.PortException.Reason;

/**
 * Finds, at each opening, the path at which the wanted port is now.
 *
 * <pre>
 *   usb:1a86:7523:SERIAL ──▶ the one listed port that is it
 *   /dev/ttyACM0         ──▶ that path; but when it is gone, or another device has it, the one port that came since the last
 *                            opening and is the same USB device as was opened there
 * </pre>
 *
 * <p>Ports of the same identity that were there already, like another converter of the same make, are never taken for the one
 * that came back. Not thread-safe.
 */
final class PortSearch {
    /** What was opened last, and which others looked the same then. */
    private record Opened(UsbIdentity usb, Set<String> others) {}

    private final String place;
    private final Optional<UsbIdentity> wanted;
    private final PortListing listing;
    private Optional<Opened> opened = Optional.empty();

    /** @param place a path, or a USB identity as it is written */
    PortSearch(String place, PortListing listing) {
        this.place = place;
        this.listing = listing;
        wanted = UsbIdentity.read(place);
    }

    /**
     * The path to open; that it can be opened is not known yet.
     *
     * @throws PortException if no port, or more than one, is the wanted device
     */
    String find() throws PortException {
        if (wanted.isPresent()) {
            UsbIdentity usb = wanted.get();
            List<ListedPort> found = matching(usb);
            return only(usb, found).orElseThrow(() -> new PortException(Reason.NOT_THERE, missing()));
        }
        return opened.isPresent() ? foundAgain(opened.get()) : place;
    }

    private String foundAgain(Opened before) throws PortException {
        boolean isThere = Files.exists(Path.of(place));
        Optional<UsbIdentity> here = usbAt(place);
        if (isThere && (here.isEmpty() || here.get().equals(before.usb))) {
            return place;
        }
        List<ListedPort> come = matching(before.usb).stream()
                .filter(port -> !before.others.contains(port.path()))
                .toList();
        return isThere && come.size() != 1 ? place : only(before.usb, come).orElse(place);
    }

    private static Optional<String> only(UsbIdentity usb, List<ListedPort> found) throws PortException {
        if (found.size() > 1) {
            throw new PortException(
                    Reason.REFUSED,
                    "more than one port is " + usb + ": "
                            + found.stream().map(ListedPort::path).collect(Collectors.joining(", "))
                            + ".\n  None is taken, because it could be the wrong one. Unplug the other, or name the port by its place:"
                            + " a link below /dev/serial/by-path.");
        }
        return found.stream().map(ListedPort::path).findFirst();
    }

    /** The port at {@code path} was opened. */
    void opened(String path) {
        opened = usbAt(path)
                .map(usb -> new Opened(
                        usb,
                        matching(usb).stream()
                                .map(ListedPort::path)
                                .filter(other -> !isSame(other, path))
                                .collect(Collectors.toSet())));
    }

    /** What was opened last, where it is a USB device. */
    Optional<UsbIdentity> lastIdentity() {
        return opened.map(Opened::usb);
    }

    private List<ListedPort> matching(UsbIdentity usb) {
        return listing.now().stream()
                .filter(port -> port.usb().filter(usb::matches).isPresent())
                .toList();
    }

    private Optional<UsbIdentity> usbAt(String path) {
        return listing.now().stream()
                .filter(port -> isSame(port.path(), path))
                .findFirst()
                .flatMap(ListedPort::usb);
    }

    /** Also when one is a link to the other. */
    private static boolean isSame(String one, String other) {
        try {
            return one.equals(other)
                    || Path.of(one).toRealPath().equals(Path.of(other).toRealPath());
        } catch (IOException notThere) {
            return false;
        }
    }

    /** That the port is not there, and which are. */
    String missing() {
        return "port " + place + " is not there.\n  Plug the instrument in, or name another in [instrument] port. "
                + thereAre();
    }

    /** The ports there are, in a sentence. */
    String thereAre() {
        List<ListedPort> ports = listing.now();
        return ports.isEmpty()
                ? "No serial port is there now."
                : "Ports there are: " + ports.stream().map(PortSearch::words).collect(Collectors.joining(", ")) + ".";
    }

    private static String words(ListedPort port) {
        return port.path() + port.usb().map(usb -> " (" + usb + ")").orElse("");
    }
}

package tautlog.logger.port;

import java.util.List;

/** Which serial ports there are. */
@FunctionalInterface
public interface PortListing {
    /** Every port the system knows now. */
    List<ListedPort> now();
}

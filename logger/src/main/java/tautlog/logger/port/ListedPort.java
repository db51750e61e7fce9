package tautlog.logger.port;

/**
 * A serial port as the system knows it.
 *
 * @param path what goes into {@code port = "…"}
 * @param description the system's words for it, may be empty
 * @param maker of a USB device, else empty
 * @param serial of a USB device, else empty
 */
public record ListedPort(String path, String description, String maker, String serial) {}

package tautlog.logger.port;

import java.util.Optional;

/**
 * A serial port as the system knows it.
 *
 * @param path what goes into {@code port = "…"}
 * @param description the system's words for it, may be empty
 * @param maker of a USB device, else empty
 * @param usb what may go into {@code port = "…"} instead; empty when it is no USB device
 */
public record ListedPort(String path, String description, String maker, Optional<UsbIdentity> usb) {
    /** Of a USB device that tells one, else empty. */
    public String serial() {
        return usb.flatMap(UsbIdentity::serial).orElse("");
    }
}

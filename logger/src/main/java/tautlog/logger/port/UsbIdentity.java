package tautlog.logger.port;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * By what a USB device is known again under another name, written {@code usb:1a86:7523:SERIAL}, as {@code tautlogd ports}
 * prints it. The serial number may be left out; many cheap converters have none.
 *
 * @param vendor 0 to 65535, hexadecimal when written
 * @param product 0 to 65535, hexadecimal when written
 * @param serial as the device tells it
 */
public record UsbIdentity(int vendor, int product, Optional<String> serial) {
    /** How a port's name begins that is one of these. */
    public static final String PREFIX = "usb:";

    private static final Pattern WRITTEN = Pattern.compile("usb:(\\p{XDigit}{4}):(\\p{XDigit}{4})(?::(.+))?");

    /** Reads one; empty when {@code text} is written otherwise. */
    public static Optional<UsbIdentity> read(String text) {
        Matcher parts = WRITTEN.matcher(text);
        return parts.matches()
                ? Optional.of(new UsbIdentity(
                        Integer.parseInt(parts.group(1), 16),
                        Integer.parseInt(parts.group(2), 16),
                        Optional.ofNullable(parts.group(3))))
                : Optional.empty();
    }

    /** Whether {@code other} is such a device; where this one tells no serial number, any will do. */
    boolean matches(UsbIdentity other) {
        return vendor == other.vendor && product == other.product && (serial.isEmpty() || serial.equals(other.serial));
    }

    /** As it is written. */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "usb:%04x:%04x", vendor, product)
                + serial.map(number -> ":" + number).orElse("");
    }
}

package tautlog.logger.port;

/**
 * A serial port and how its characters are made.
 *
 * @param path as the system names it, or a {@link UsbIdentity} as it is written
 * @param baud bits per second
 * @param dataBits 7 or 8
 * @param stopBits 1 or 2
 */
public record SerialSetting(String path, int baud, int dataBits, Parity parity, int stopBits) {
    /** The bit that lets a receiver find a character of which one bit is wrong. */
    public enum Parity {
        NONE,
        EVEN,
        ODD
    }

    /** @throws IllegalArgumentException if a number is none of those above */
    public SerialSetting {
        if (dataBits < 7 || dataBits > 8 || stopBits < 1 || stopBits > 2) {
            throw new IllegalArgumentException(
                    "data bits must be 7 or 8 and stop bits 1 or 2, were " + dataBits + " and " + stopBits);
        }
    }

    /** 8 data bits, no parity, one stop bit. */
    public static SerialSetting plain(String path, int baud) {
        return new SerialSetting(path, baud, 8, Parity.NONE, 1);
    }
}

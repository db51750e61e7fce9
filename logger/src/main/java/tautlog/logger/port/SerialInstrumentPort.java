package tautlog.logger.port;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/** A serial port of this computer. */
public final class SerialInstrumentPort implements InstrumentPort {
    private static final int READ_WAIT_MILLIS = 100;
    // the system's error numbers on Linux, macOS and the BSDs
    private static final int NOT_ALLOWED = 13;
    private static final List<Integer> IN_USE = List.of(11, 16, 35);

    private final SerialSetting setting;
    private final String path;

    public SerialInstrumentPort(SerialSetting setting) {
        this.setting = setting;
        path = setting.path();
    }

    /**
     * With 8 data bits, no parity, one stop bit.
     *
     * @param baud bits per second
     */
    public SerialInstrumentPort(String path, int baud) {
        this(SerialSetting.plain(path, baud));
    }

    /** Every port the system knows now. */
    public static List<ListedPort> list() {
        return Arrays.stream(SerialPort.getCommPorts())
                .map(port -> new ListedPort(
                        port.getSystemPortPath(),
                        known(port.getPortDescription()),
                        known(port.getManufacturer()),
                        known(port.getSerialNumber())))
                .toList();
    }

    private static String known(String words) {
        return words.equals("Unknown") ? "" : words;
    }

    @Override
    public String name() {
        return path;
    }

    @Override
    public InstrumentLine open() throws PortException {
        // A fresh port at every opening: a symbolic link is resolved only once.
        SerialPort port = find();
        port.setComPortParameters(
                setting.baud(),
                setting.dataBits(),
                setting.stopBits() == 1 ? SerialPort.ONE_STOP_BIT : SerialPort.TWO_STOP_BITS,
                parity(setting.parity()));
        port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_WAIT_MILLIS, 0);
        if (!port.openPort(0)) {
            throw new PortException(refusal(port.getLastErrorCode()));
        }
        return new SerialLine(port);
    }

    private static int parity(SerialSetting.Parity parity) {
        return switch (parity) {
            case NONE -> SerialPort.NO_PARITY;
            case EVEN -> SerialPort.EVEN_PARITY;
            case ODD -> SerialPort.ODD_PARITY;
        };
    }

    private SerialPort find() throws PortException {
        try {
            return SerialPort.getCommPort(path);
        } catch (SerialPortInvalidPortException missing) {
            throw new PortException(missing());
        }
    }

    private String missing() {
        return "port " + path + " is not there.\n  Plug the instrument in, or name another in [instrument] port. "
                + thereAre();
    }

    private String refusal(int error) {
        if (!Files.exists(Path.of(path))) {
            return missing();
        }
        if (error == NOT_ALLOWED) {
            return "port " + path + " may not be opened by this user.\n"
                    + "  Add the user to the group that owns it (often dialout) and log in again.";
        }
        if (IN_USE.contains(error)) {
            return "port " + path + " is in use by another program.\n"
                    + "  Stop that program (another tautlogd, a terminal), or name another port. " + thereAre();
        }
        return "port " + path + " cannot be opened as a serial port (system error " + error + ").\n"
                + "  Look at what it is, or name another in [instrument] port. " + thereAre();
    }

    private static String thereAre() {
        List<ListedPort> ports = list();
        return ports.isEmpty()
                ? "No serial port is there now."
                : "Ports there are: " + ports.stream().map(ListedPort::path).collect(Collectors.joining(", ")) + ".";
    }
}

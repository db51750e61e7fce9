package tautlog.logger.port;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tautlog.logger.port.PortException.Reason;

/**
 * A serial port of this computer, found anew at each opening ({@link PortSearch}). A port that is found at another path than
 * before is said in the log, with the reason.
 */
public final class SerialInstrumentPort implements InstrumentPort {
    private static final int READ_WAIT_MILLIS = 100;
    // the system's error numbers on Linux, macOS and the BSDs
    private static final int NOT_ALLOWED = 13;
    private static final List<Integer> IN_USE = List.of(11, 16, 35);

    private static final Logger LOG = LoggerFactory.getLogger(SerialInstrumentPort.class);

    private final SerialSetting setting;
    private final PortSearch search;
    private volatile String at;

    public SerialInstrumentPort(SerialSetting setting) {
        this(setting, SerialInstrumentPort::list);
    }

    /** With another idea of which ports there are. */
    public SerialInstrumentPort(SerialSetting setting, PortListing listing) {
        this.setting = setting;
        search = new PortSearch(setting.path(), listing);
        at = setting.path();
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
                        usb(port)))
                .toList();
    }

    private static Optional<UsbIdentity> usb(SerialPort port) {
        return port.getVendorID() < 0 || port.getProductID() < 0
                ? Optional.empty()
                : Optional.of(new UsbIdentity(
                        port.getVendorID(),
                        port.getProductID(),
                        Optional.of(known(port.getSerialNumber())).filter(number -> !number.isBlank())));
    }

    private static String known(String words) {
        return words.equals("Unknown") ? "" : words;
    }

    /** As configured, and where it was opened last when that is elsewhere. */
    @Override
    public String name() {
        String path = at;
        return path.equals(setting.path()) ? path : setting.path() + " (at " + path + ")";
    }

    @Override
    public InstrumentLine open() throws PortException {
        // A fresh port at every opening: a symbolic link is resolved only once.
        String path = search.find();
        SerialPort port = find(path);
        port.setComPortParameters(
                setting.baud(),
                setting.dataBits(),
                setting.stopBits() == 1 ? SerialPort.ONE_STOP_BIT : SerialPort.TWO_STOP_BITS,
                parity(setting.parity()));
        port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_WAIT_MILLIS, 0);
        if (!port.openPort(0)) {
            throw refusal(path, port.getLastErrorCode());
        }
        search.opened(path);
        tellPlace(path);
        return new SerialLine(port);
    }

    private void tellPlace(String path) {
        if (!path.equals(at)) {
            LOG.info(
                    "port {} is at {} now, found by its USB identity {}",
                    setting.path(),
                    path,
                    search.lastIdentity().map(UsbIdentity::toString).orElse("unknown"));
        }
        at = path;
    }

    private static int parity(SerialSetting.Parity parity) {
        return switch (parity) {
            case NONE -> SerialPort.NO_PARITY;
            case EVEN -> SerialPort.EVEN_PARITY;
            case ODD -> SerialPort.ODD_PARITY;
        };
    }

    private SerialPort find(String path) throws PortException {
        try {
            return SerialPort.getCommPort(path);
        } catch (SerialPortInvalidPortException missing) {
            throw new PortException(Reason.NOT_THERE, search.missing());
        }
    }

    private PortException refusal(String path, int error) {
        if (!Files.exists(Path.of(path))) {
            return new PortException(Reason.NOT_THERE, search.missing());
        }
        if (error == NOT_ALLOWED) {
            return new PortException(
                    Reason.REFUSED,
                    "port " + path + " may not be opened by this user.\n"
                            + "  Add the user to the group that owns it (often dialout) and log in again.");
        }
        if (IN_USE.contains(error)) {
            return new PortException(
                    Reason.REFUSED,
                    "port " + path + " is in use by another program.\n"
                            + "  Stop that program (another tautlogd, a terminal), or name another port. "
                            + search.thereAre());
        }
        return new PortException(
                Reason.REFUSED,
                "port " + path + " cannot be opened as a serial port (system error " + error + ").\n"
                        + "  Look at what it is, or name another in [instrument] port. " + search.thereAre());
    }
}

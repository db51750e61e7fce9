package tautlog.logger.port;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PortSearchTest {
    private static final String WITH_SERIAL = "usb:1a86:55d4:TL0001";
    private static final String OTHER_SERIAL = "usb:1a86:55d4:TL0002";
    private static final String WITHOUT = "usb:1a86:7523";

    @TempDir
    Path dev;

    private final ListedPorts listed = new ListedPorts();

    /** A name there is, as long as the device is plugged in. */
    private String plug(String name, String identity) throws IOException {
        Path path = dev.resolve(name);
        Files.createFile(path);
        listed.plug(path.toString(), identity);
        return path.toString();
    }

    private void unplug(String path) throws IOException {
        Files.delete(Path.of(path));
        listed.unplug(path);
    }

    private PortSearch openedAt(String path) throws PortException {
        PortSearch search = new PortSearch(path, listed);
        search.opened(search.find());
        return search;
    }

    @Test
    void readsAndWritesAnIdentity() {
        UsbIdentity usb = UsbIdentity.read("usb:1A86:7523:a:b c").orElseThrow();

        assertEquals(new UsbIdentity(0x1a86, 0x7523, Optional.of("a:b c")), usb);
        assertEquals("usb:1a86:7523:a:b c", usb.toString());
        assertEquals(
                "usb:0001:00ff", UsbIdentity.read("usb:0001:00ff").orElseThrow().toString());
        assertEquals(Optional.empty(), UsbIdentity.read("usb:1a86"));
        assertEquals(Optional.empty(), UsbIdentity.read("usb:1a86:75230"));
        assertEquals(Optional.empty(), UsbIdentity.read("usb:1a86:7523:"));
    }

    @Test
    void findsANamedIdentityUnderWhateverNameItHas() throws Exception {
        String first = plug("ttyACM0", WITH_SERIAL);
        plug("ttyACM1", OTHER_SERIAL);
        PortSearch search = new PortSearch(WITH_SERIAL, listed);
        assertEquals(first, search.find());
        search.opened(first);

        unplug(first);
        assertThrows(PortException.class, search::find);
        String second = plug("ttyACM2", WITH_SERIAL);

        assertEquals(second, search.find());
    }

    @Test
    void refusesTwoPortsOfTheNamedIdentityAndNamesThem() throws Exception {
        String one = plug("ttyUSB0", WITHOUT);
        String other = plug("ttyUSB1", WITHOUT);

        PortException refused = assertThrows(PortException.class, new PortSearch(WITHOUT, listed)::find);

        assertEquals(PortException.Reason.REFUSED, refused.reason());
        assertTrue(
                refused.getMessage().startsWith("more than one port is usb:1a86:7523: " + one + ", " + other + "."),
                refused.getMessage());
    }

    @Test
    void takesAnySerialNumberWhereNoneIsNamed() throws Exception {
        String path = plug("ttyACM0", WITH_SERIAL);

        assertEquals(path, new PortSearch("usb:1a86:55d4", listed).find());
    }

    @Test
    void findsAPathAgainByTheIdentityThatWasOpenedThere() throws Exception {
        String path = plug("ttyACM0", WITH_SERIAL);
        PortSearch search = openedAt(path);

        unplug(path);
        assertEquals(path, search.find(), "nothing to be found: it is tried where it was");
        plug("ttyACM1", OTHER_SERIAL);
        assertEquals(path, search.find(), "another device");
        String again = plug("ttyACM2", WITH_SERIAL);

        assertEquals(again, search.find());
    }

    @Test
    void followsTheDeviceWhenAnotherTookItsName() throws Exception {
        String path = plug("ttyACM0", WITH_SERIAL);
        PortSearch search = openedAt(path);
        unplug(path);
        plug("ttyACM0", OTHER_SERIAL);
        assertEquals(path, search.find(), "only the name is there: somebody put another device in its place");

        String again = plug("ttyACM1", WITH_SERIAL);

        assertEquals(again, search.find());
    }

    @Test
    void neverTakesOneOfTheSameMakeThatWasThereBefore() throws Exception {
        String instrument = plug("ttyUSB0", WITHOUT);
        plug("ttyUSB1", WITHOUT);
        PortSearch search = openedAt(instrument);

        unplug(instrument);
        assertEquals(instrument, search.find());
        String again = plug("ttyUSB2", WITHOUT);
        assertEquals(again, search.find());
        plug("ttyUSB3", WITHOUT);

        assertThrows(PortException.class, search::find);
    }

    @Test
    void knowsADeviceThroughALink() throws Exception {
        String path = plug("ttyACM0", WITH_SERIAL);
        Path link = Files.createSymbolicLink(dev.resolve("by-id"), Path.of(path));
        PortSearch search = openedAt(link.toString());

        unplug(path);
        String again = plug("ttyACM1", WITH_SERIAL);
        assertEquals(again, search.find(), "the link leads nowhere");
        Files.delete(link);
        Files.createSymbolicLink(link, Path.of(again));

        assertEquals(link.toString(), search.find(), "the link leads there again");
    }

    @Test
    void staysAtAPathOfWhichNothingIsKnown() throws Exception {
        String path = plug("ttyS0", "");
        PortSearch search = openedAt(path);
        unplug(path);
        plug("ttyS1", "");

        assertEquals(path, search.find());
        assertTrue(search.missing().contains("Ports there are: " + dev.resolve("ttyS1") + "."), search.missing());
    }
}

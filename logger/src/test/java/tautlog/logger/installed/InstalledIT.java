package tautlog.logger.installed;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInfo;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.StoredOuting;
import tautlog.recording.Outing;
import tautlog.recording.Recording;

/** The package on a board: installed, started, hung, torn, upgraded, removed. Each test is switched on with the package installed. */
class InstalledIT {
    private static final String STATUS = "tautlogd status --config /etc/tautlog/logger.toml --json";
    private static final String MAIN_PROCESS = "systemctl show -P MainPID tautlogd";
    private static final List<String> SETTINGS = List.of("logger.toml", "rig.toml", "calibration.toml");

    @TempDir
    static Path work;

    private static Optional<DebianRoot> debian = Optional.empty();
    private Optional<BootedBoard> switchedOn = Optional.empty();

    @BeforeAll
    static void install() throws Exception {
        DebianRoot root = DebianRoot.make(work);
        debian = Optional.of(root);
        Path shown = root.layer("installed");
        Files.copy(DebianRoot.builtPackage(), shown.resolve("var/tautlog.deb"));
        String said = DebianRoot.in(shown, "dpkg -i /var/tautlog.deb").wellDone();
        assertFalse(said.contains("archive of classes"), said);
    }

    @AfterAll
    static void throwAway() throws Exception {
        if (debian.isPresent()) {
            debian.get().close();
        }
    }

    @BeforeEach
    void switchOn(TestInfo test) throws Exception {
        DebianRoot root = debian.orElseThrow();
        Path shown = root.layer(test.getTestMethod().orElseThrow().getName(), "installed");
        switchedOn = Optional.of(BootedBoard.switchOn(shown));
    }

    @AfterEach
    void switchOff() throws Exception {
        if (switchedOn.isPresent()) {
            switchedOn.get().close();
        }
    }

    private BootedBoard board() {
        return switchedOn.orElseThrow();
    }

    /** As the crew does it: rig and calibration beside the example, here the examples'; then the instrument at its port. */
    private void setUp() throws IOException, InterruptedException {
        board().run(
                        "cp /usr/share/doc/tautlog/examples/rig.toml /usr/share/doc/tautlog/examples/calibration.toml /etc/tautlog")
                .wellDone();
        board().run("install -d -o tautlog /run/winch; systemd-run --uid=tautlog"
                        + " tautlogd simulate --scenario afternoon --port-link /run/winch/instrument --pace 2")
                .wellDone();
        board().await("readlink /run/winch/instrument", said -> said.startsWith("/dev/pts/"));
        board().run("ln -s $(readlink /run/winch/instrument) /dev/tautlog-instrument")
                .wellDone();
    }

    private void startAndAwaitSamples() throws IOException, InterruptedException {
        board().run("systemctl start tautlogd").wellDone();
        board().await("ls /var/lib/tautlog/recordings", said -> storedSamples() > 0);
    }

    private Path recordings() {
        return board().file("var/lib/tautlog/recordings");
    }

    private long storedSamples() {
        try (Recording recording = Recording.open(StoredOuting.only(recordings()))) {
            return recording.outings().stream().mapToLong(Outing::samples).sum();
        } catch (IOException | AssertionError notYet) {
            return 0;
        }
    }

    @Test
    void waitsForTheRigAndThenRecordsAsAServiceWithoutRights() throws Exception {
        String before = board().run("systemctl show -P ConditionResult tautlogd; systemctl is-enabled tautlogd")
                .said();
        assertEquals("no\nenabled\n", before);

        setUp();
        startAndAwaitSamples();

        assertEquals("active\n", board().run("systemctl is-active tautlogd").said());
        assertTrue(board().run(STATUS).wellDone().contains("\"running\": true"), "status reaches it");
        board().run("tautlogd mark --config /etc/tautlog/logger.toml --note landing")
                .wellDone();
        String process = board().run("cat /proc/$(" + MAIN_PROCESS + ")/status").wellDone();
        assertTrue(process.matches("(?s).*CapEff:\\s+0+\\n.*NoNewPrivs:\\s+1\\n.*Seccomp:\\s+2\\n.*"), process);
        String user = board().run("stat -c %U /proc/$(" + MAIN_PROCESS + ")").wellDone();
        assertEquals("tautlog\n", user);
        String maps = board().run("cat /proc/$(" + MAIN_PROCESS + ")/maps").wellDone();
        assertTrue(maps.contains("/usr/lib/tautlog/tautlogd.jsa"), "the archive of classes is used");
        assertTrue(maps.contains("/usr/lib/tautlog/native/"), "libraries are loaded from where they stand");
        assertNotEquals(
                0,
                board().run("setpriv --reuid=tautlog --regid=tautlog --init-groups test -w /etc/tautlog/rig.toml")
                        .code());
        String scheduled = board().run("for task in /proc/$(" + MAIN_PROCESS + ")/task/*; do"
                        + " echo $(cat $task/comm) $(chrt -p ${task##*/} | grep -o 'SCHED_.*'); done")
                .wellDone();
        for (String ahead : List.of("reader", "recorder", "beacon", "VM Thread")) {
            assertTrue(scheduled.contains(ahead + " SCHED_RR\n"), scheduled);
        }
        assertTrue(scheduled.contains("control SCHED_OTHER\n"), scheduled);
        board().run("systemctl stop tautlogd").wellDone();
        assertEquals(
                "success\n", board().run("systemctl show -P Result tautlogd").said());
        assertTrue(storedSamples() > 0, "closed in order");
    }

    /** A file system in memory, with an owner as FAT is mounted with, in the drive's place; no udev event comes here. */
    @Test
    void writesToADriveThatIsMountedBeforeItStartsOrWhileItRuns() throws Exception {
        board().run("mount --make-rshared /").wellDone(); // as on a system that really booted
        // what is mounted there without the device that the unit is bound to would be unmounted at once
        board().run("rm /usr/lib/systemd/system/media-tautlog.mount; systemctl daemon-reload")
                .wellDone();
        String plug = "mount -t tmpfs -o size=32m,uid=$(id -u tautlog),gid=$(id -g tautlog),nosuid,nodev,noexec drive"
                + " /media/tautlog";
        setUp();
        startAndAwaitSamples();
        String noDrive = board().run(STATUS).wellDone();
        assertTrue(noDrive.contains("\"state\": \"none\""), noDrive);

        board().run(plug).wellDone();

        board().await(STATUS, said -> said.contains("\"state\": \"verified\""));
        board().run("ls /media/tautlog/tautlog/*/*.tautlog /media/tautlog/tautlog/*/last-links.txt")
                .wellDone();

        board().run("umount -l /media/tautlog").wellDone();
        board().await(STATUS, said -> said.contains("\"plugged\": false"));
        assertEquals("", board().run("ls -A /media/tautlog").said());

        board().run("systemctl stop tautlogd; " + plug + "; systemctl start tautlogd")
                .wellDone();
        board().await(STATUS, said -> said.contains("\"state\": \"verified\""));
        board().run("ls /media/tautlog/tautlog/*/*.tautlog").wellDone();
    }

    @Test
    void isStartedAgainWhenItHangs() throws Exception {
        board().run("mkdir -p /run/systemd/system/tautlogd.service.d; printf '[Service]\\nWatchdogSec=3\\n'"
                        + " > /run/systemd/system/tautlogd.service.d/soon.conf; systemctl daemon-reload")
                .wellDone();
        setUp();
        startAndAwaitSamples();
        String first = board().run(MAIN_PROCESS).said();

        board().await("sleep 4; " + MAIN_PROCESS, first::equals); // it is fed while it works
        board().run("kill -STOP $(" + MAIN_PROCESS + ")").wellDone();

        board().await(MAIN_PROCESS, said -> !said.equals(first) && !said.equals("0\n"));
        board().await("systemctl is-active tautlogd", "active\n"::equals);
    }

    @Test
    void aTornHistoryTouchesNoSetting() throws Exception {
        setUp();
        startAndAwaitSamples();
        board().run("systemctl kill --signal=KILL tautlogd; systemctl stop tautlogd")
                .wellDone();
        byte[][] before = settings();
        Path today = StoredOuting.only(recordings());
        Path log = today.resolveSibling(today.getFileName() + "-wal");
        try (FileChannel torn = FileChannel.open(log, StandardOpenOption.WRITE)) {
            torn.truncate(torn.size() * 2 / 3);
        }
        String winch = today.getFileName().toString().replaceAll("_.*", "");
        Files.write(today.resolveSibling(winch + "_2026-01-01.tautlog"), new byte[5_000]);

        board().run("systemctl start tautlogd").wellDone();

        board().await("tautlogd status --config /etc/tautlog/logger.toml", said -> said.contains("limit 15.0 kN"));
        assertArrayEquals(before, settings());
    }

    private byte[][] settings() throws IOException {
        byte[][] read = new byte[SETTINGS.size()][];
        for (int i = 0; i < read.length; i++) {
            read[i] = Files.readAllBytes(board().file("etc/tautlog").resolve(SETTINGS.get(i)));
        }
        return read;
    }

    @Test
    void upgradeKeepsEverythingAndRemovalLeavesRecordings() throws Exception {
        setUp();
        startAndAwaitSamples();
        board().run("echo '# ours' >> /etc/tautlog/logger.toml").wellDone();
        String first = board().run(MAIN_PROCESS).said();
        long before = storedSamples();

        board().run("cd /var && dpkg-deb -R tautlog.deb new && sed -i 's/^Version:.*/Version: 99/' new/DEBIAN/control"
                        + " && dpkg-deb -b --root-owner-group new new.deb && dpkg -i new.deb </dev/null")
                .wellDone();

        board().await(MAIN_PROCESS, said -> !said.equals(first) && !said.equals("0\n"));
        assertTrue(board().run("cat /etc/tautlog/logger.toml").said().endsWith("# ours\n"));
        board().await("ls /var/lib/tautlog/recordings", said -> storedSamples() > before);

        board().run("dpkg -r tautlog").wellDone();
        long left = storedSamples();
        assertTrue(left > before);
        assertTrue(Files.exists(board().file("etc/tautlog/logger.toml")));
        assertFalse(Files.exists(board().file("usr/lib/tautlog")), "what the installation made is gone");

        assertTrue(board().run("dpkg -P tautlog").wellDone().contains("recordings in /var/lib/tautlog stay"));
        assertEquals(left, storedSamples());
        assertTrue(Files.exists(board().file("etc/tautlog/rig.toml")), "the crew's own stays");
    }
}

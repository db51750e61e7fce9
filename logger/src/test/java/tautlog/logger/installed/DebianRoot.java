package tautlog.logger.installed;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import tautlog.logger.cli.Mandatory;

/**
 * A small Debian in a folder, and layers on top of it that can be written and thrown away (overlayfs). Root, Debian.
 *
 * <p>{@code -Dtautlog.debian.root=FOLDER} keeps the lowest layer for later runs: it is made there when the folder is missing.
 */
final class DebianRoot implements AutoCloseable {
    private static final String PACKAGES = "openjdk-17-jre-headless,adduser,init-system-helpers,udev,systemd,procps";

    private final Path memory;
    private final List<Path> mounts = new ArrayList<>();

    private DebianRoot(Path memory) {
        this.memory = memory;
    }

    /** Makes it, or skips the test and says why. */
    static DebianRoot make(Path work) throws IOException {
        if (!"1".equals(System.getenv("TAUTLOG_MANDATORY")) && !Boolean.getBoolean("tautlog.debian")) {
            Mandatory.skip("installing the package takes a Debian of its own and two minutes: -Dtautlog.debian=true");
        }
        Path memory = Files.createDirectories(work.resolve("memory"));
        DebianRoot root = new DebianRoot(memory);
        try {
            root.mount(memory, "-t", "tmpfs", "-o", "size=3g", "tautlog-test");
            root.bootstrap();
            return root;
        } catch (IOException | AssertionError refused) {
            root.close();
            Mandatory.skip("no Debian to install into, which takes root and the package debootstrap: " + refused);
            throw refused;
        }
    }

    private Path lowest() {
        return Path.of(System.getProperty(
                "tautlog.debian.root", memory.resolve("debian").toString()));
    }

    private void bootstrap() throws IOException {
        if (Files.exists(lowest().resolve("usr/bin/dpkg"))) {
            return;
        }
        Ran.command(
                        "debootstrap",
                        "--variant=minbase",
                        "--include=" + PACKAGES,
                        "bookworm",
                        lowest().toString(),
                        mirror())
                .wellDone();
    }

    /** Where this machine gets its own packages from. */
    private static String mirror() throws IOException {
        String known = Ran.command(
                        "apt-get", "indextargets", "--format", "$(REPO_URI) $(CODENAME)", "Created-By: Packages")
                .wellDone();
        return known.lines()
                .filter(line -> line.endsWith(" bookworm"))
                .map(line -> line.substring(0, line.indexOf(' ')))
                .findFirst()
                .orElseThrow(() -> new IOException("apt on this machine knows no mirror of Debian bookworm"));
    }

    /** A folder that shows the Debian with {@code layers} over it, uppermost first; what is written goes into the layer {@code name}. */
    Path layer(String name, String... layers) throws IOException {
        List<String> lower = new ArrayList<>();
        for (String layer : layers) {
            lower.add(memory.resolve(layer).resolve("written").toString());
        }
        lower.add(lowest().toString());
        Path folder = memory.resolve(name);
        for (String part : List.of("written", "work", "shown")) {
            Files.createDirectories(folder.resolve(part));
        }
        mount(
                folder.resolve("shown"),
                "-t",
                "overlay",
                "-o",
                String.format(
                        Locale.ROOT,
                        "lowerdir=%s,upperdir=%s,workdir=%s",
                        String.join(":", lower),
                        folder.resolve("written"),
                        folder.resolve("work")),
                "overlay");
        return folder.resolve("shown");
    }

    private void mount(Path at, String... how) throws IOException {
        List<String> words = new ArrayList<>(List.of("mount"));
        words.addAll(List.of(how));
        words.add(at.toString());
        Ran.command(words).wellDone();
        mounts.add(0, at);
    }

    /** Runs {@code command} in {@code shown}, with the kernel's folders it needs. */
    static Ran in(Path shown, String command) throws IOException {
        String here = shown.toString();
        String mounts = "mount -t proc proc " + here + "/proc; mount --rbind /dev " + here + "/dev; ";
        return Ran.command("unshare", "-m", "sh", "-c", mounts + "exec chroot " + here + " sh -c '" + command + "'");
    }

    /** The package that this build made. */
    static Path builtPackage() throws IOException {
        try (Stream<Path> files = Files.list(Path.of(System.getProperty("tautlog.root"), "logger", "target"))) {
            return files.filter(file -> file.toString().endsWith("_all.deb"))
                    .findFirst()
                    .orElseThrow(() -> new IOException("no package in logger/target"));
        }
    }

    @Override
    public void close() throws IOException {
        for (Path at : mounts) {
            Ran.command("umount", "-l", at.toString());
        }
    }
}

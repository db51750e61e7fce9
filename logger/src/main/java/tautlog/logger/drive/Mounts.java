package tautlog.logger.drive;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What is mounted, as the system lists it. Looking there touches no drive, so that one that hangs holds nobody up. Source: proc(5), {@code
 * /proc/pid/mountinfo}.
 */
final class Mounts {
    /** Where Linux lists them. */
    static final Path TABLE = Path.of("/proc/self/mountinfo");

    private static final int LEAST_FIELDS = 6;

    private final Path table;

    Mounts(Path table) {
        this.table = table;
    }

    /**
     * A mounted file system.
     *
     * @param id the system's number for this mounting; given again after it ended
     * @param under the number of the one that it is mounted on
     * @param device major and minor number
     * @param at its place as text: it need not be a path to a program whose locale knows ASCII only
     */
    record Mount(String id, String under, String device, String at, String type) {}

    /**
     * The drive that is mounted exactly at {@code folder}: a file system other than the one around it. Empty when there is none, also for a
     * folder of the same disk that is bound onto itself, and for a place where something only would be mounted when it is used.
     */
    Optional<Mount> drive(Path folder) throws IOException {
        Path wanted = folder.toAbsolutePath().normalize();
        List<Mount> all = all();
        Optional<Mount> at = seen(all, wanted.toString());
        Optional<Mount> around = Optional.empty();
        for (Path above = wanted.getParent(); above != null && around.isEmpty(); above = above.getParent()) {
            around = seen(all, above.toString());
        }
        Optional<String> deviceAround = around.map(Mount::device);
        return at.filter(mount -> !mount.type().equals("autofs"))
                .filter(mount -> !deviceAround.equals(Optional.of(mount.device())));
    }

    /** Of several at one place the one that no other covers; their order in the list says nothing. */
    private static Optional<Mount> seen(List<Mount> all, String place) {
        List<Mount> there =
                all.stream().filter(mount -> mount.at().equals(place)).toList();
        return there.stream()
                .filter(mount ->
                        there.stream().noneMatch(other -> other.under().equals(mount.id()) && !other.equals(mount)))
                .findFirst();
    }

    private List<Mount> all() throws IOException {
        List<Mount> mounts = new ArrayList<>();
        // bytes of a path that are no UTF-8 must not stop the reading
        Files.readAllLines(table, StandardCharsets.ISO_8859_1)
                .forEach(line -> mount(line).ifPresent(mounts::add));
        return mounts;
    }

    /** 36 35 98:0 /mnt1 /mnt2 rw,noatime master:1 - ext3 /dev/root rw,errors=continue. */
    private static Optional<Mount> mount(String line) {
        List<String> fields = List.of(line.split(" ", -1));
        int dash = fields.indexOf("-");
        if (dash < LEAST_FIELDS || dash + 1 >= fields.size()) {
            return Optional.empty();
        }
        byte[] place = unescaped(fields.get(4)).getBytes(StandardCharsets.ISO_8859_1);
        String at = new String(place, StandardCharsets.UTF_8);
        return Optional.of(new Mount(fields.get(0), fields.get(1), fields.get(2), at, fields.get(dash + 1)));
    }

    /** Space, tab, line feed and backslash stand as a backslash and three octal digits. */
    private static String unescaped(String field) {
        return field.replace("\\040", " ")
                .replace("\\011", "\t")
                .replace("\\012", "\n")
                .replace("\\134", "\\");
    }
}

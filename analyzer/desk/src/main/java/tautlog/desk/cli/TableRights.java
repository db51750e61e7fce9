package tautlog.desk.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Set;

/** Who may read and write a file that a table takes the place of. Where a file system knows no owners and permissions, nothing is kept. */
final class TableRights {
    private static final Set<PosixFilePermission> WRITE = EnumSet.of(
            PosixFilePermission.OWNER_WRITE, PosixFilePermission.GROUP_WRITE, PosixFilePermission.OTHERS_WRITE);
    /** Of a new file, before the system takes away what this user's mask says. */
    private static final Set<PosixFilePermission> NEW = PosixFilePermissions.fromString("rw-rw-rw-");

    private TableRights() {}

    private static boolean areKnown(Path file) {
        return file.getFileSystem().supportedFileAttributeViews().contains("posix");
    }

    /** Whether nobody may write to the plain file; root could. */
    static boolean isProtected(Path file) throws IOException {
        return areKnown(file)
                && Files.isRegularFile(file)
                && Collections.disjoint(Files.getPosixFilePermissions(file), WRITE);
    }

    /** How many names the file has (hard links); 1 where that is not told. */
    static int names(Path file) throws IOException {
        boolean areTold = file.getFileSystem().supportedFileAttributeViews().contains("unix");
        return areTold && Files.getAttribute(file, "unix:nlink") instanceof Integer names ? names : 1;
    }

    /** What is made to take the place of {@code file} with: nobody reads it who may not read that. */
    static FileAttribute<?>[] whileWritten(Path file) throws IOException {
        if (!areKnown(file)) {
            return new FileAttribute<?>[0];
        }
        Set<PosixFilePermission> allowed = EnumSet.copyOf(NEW);
        if (Files.exists(file)) {
            allowed.retainAll(Files.getPosixFilePermissions(file));
        }
        allowed.add(PosixFilePermission.OWNER_READ);
        allowed.add(PosixFilePermission.OWNER_WRITE);
        return new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(allowed)};
    }

    /** Gives {@code to} the permissions of {@code file}, if that is there, and its owner and group where this user may. */
    static void keep(Path file, Path to) throws IOException {
        if (!areKnown(file) || !Files.exists(file)) {
            return;
        }
        PosixFileAttributes was = Files.readAttributes(file, PosixFileAttributes.class);
        PosixFileAttributeView of = Files.getFileAttributeView(to, PosixFileAttributeView.class);
        keepOwner(was, of);
        of.setPermissions(was.permissions());
    }

    private static void keepOwner(PosixFileAttributes was, PosixFileAttributeView of) throws IOException {
        PosixFileAttributes is = of.readAttributes();
        try {
            if (!is.group().equals(was.group())) {
                of.setGroup(was.group());
            }
            if (!is.owner().equals(was.owner())) {
                of.setOwner(was.owner());
            }
        } catch (IOException e) {
            return; // who may not give files away owns what they write
        }
    }
}

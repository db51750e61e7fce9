package tautlog.desk.cli;

import picocli.CommandLine.IVersionProvider;

/** Name and version of this program. */
final class Version implements IVersionProvider {
    /** {@code tautlog 0.1.0}; without a jar {@code tautlog (not packaged)}. */
    static String text() {
        String version = Version.class.getPackage().getImplementationVersion();
        return version == null ? "tautlog (not packaged)" : "tautlog " + version;
    }

    @Override
    public String[] getVersion() {
        return new String[] {text()};
    }
}

package tautlog.logger.cli;

import java.util.Optional;
import picocli.CommandLine.IVersionProvider;

/** Name and version of this program, as recordings keep them. */
final class ProgramVersion implements IVersionProvider {
    static String words() {
        return "tautlogd "
                + Optional.ofNullable(ProgramVersion.class.getPackage().getImplementationVersion())
                        .orElse("(not packaged)");
    }

    @Override
    public String[] getVersion() {
        return new String[] {words()};
    }
}

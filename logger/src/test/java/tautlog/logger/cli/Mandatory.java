package tautlog.logger.cli;

import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.abort;

/** Tests that need what not every computer grants. */
public final class Mandatory {
    private Mandatory() {}

    /** Skips the test and says why; a failure where {@code TAUTLOG_MANDATORY=1} says that nothing may be skipped. */
    public static void skip(String reason) {
        if ("1".equals(System.getenv("TAUTLOG_MANDATORY"))) {
            fail("skipped although TAUTLOG_MANDATORY=1: " + reason);
        }
        System.err.println("skipped: " + reason); // a skip is no pass: it is seen in the build's output
        abort(reason);
    }
}

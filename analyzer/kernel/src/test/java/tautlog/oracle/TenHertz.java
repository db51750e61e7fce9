package tautlog.oracle;

import java.util.List;
import tautlog.detect.Finding;
import tautlog.fixtures.Rigs;

/**
 * The outing of the cases that were worked out by hand from {@code FINDINGS.md}, so that the oracle and the detectors cannot be
 * wrong together.
 *
 * <p>10 samples a second with one count a newton and the default settings, so N(0.1 s) = 1, N(0.15) = 2 (1.5, halves up),
 * N(0.2) = 2, N(0.25) = 3 (2.5, halves up), N(0.3) = 3, N(0.5) = 5, N(1) = 10, N(1.5) = 15, N(2) = 20, N(3) = 30. The winch pulls
 * R = 10 000 N, the limit is L = 8 000 N.
 */
final class TenHertz {
    /** Millihertz. */
    static final long TEN_HERTZ = 10_000;

    private TenHertz() {}

    static OutingBuilder outing() {
        return OutingBuilder.inNewtons(TEN_HERTZ, Rigs.withLimit("10000", "8000"));
    }

    static <T extends Finding> List<T> only(Class<T> kind, OutingBuilder outing) {
        return Oracle.of(outing.build()).findings().stream()
                .filter(kind::isInstance)
                .map(kind::cast)
                .toList();
    }
}

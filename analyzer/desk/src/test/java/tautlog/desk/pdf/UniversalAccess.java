package tautlog.desk.pdf;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import org.verapdf.core.EncryptedPdfException;
import org.verapdf.core.ModelParsingException;
import org.verapdf.core.ValidationException;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/** What a validator that is not ours finds against PDF/UA-1 (ISO 14289-1) in a file. */
public final class UniversalAccess {
    /** Chosen: a page of text has more. */
    private static final int LEAST_LOOKS = 100;

    static {
        VeraGreenfieldFoundryProvider.initialise();
    }

    private UniversalAccess() {}

    /**
     * Each clause that fails, with the validator's words and how often; in order.
     *
     * @throws IOException if the file cannot be read, or next to nothing in it was looked at
     */
    public static Map<String, Integer> failures(Path pdf) throws IOException {
        Map<String, Integer> failures = new TreeMap<>();
        try (PDFAParser file =
                        Foundries.defaultInstance().createParser(Files.newInputStream(pdf), PDFAFlavour.PDFUA_1);
                PDFAValidator validator = Foundries.defaultInstance().createValidator(PDFAFlavour.PDFUA_1, false)) {
            ValidationResult result = validator.validate(file);
            if (result.getTotalAssertions() < LEAST_LOOKS) {
                throw new IOException("only " + result.getTotalAssertions() + " things were looked at in " + pdf);
            }
            for (TestAssertion tested : result.getTestAssertions()) {
                if (tested.getStatus() == TestAssertion.Status.FAILED) {
                    failures.merge(
                            tested.getRuleId().getClause() + "-"
                                    + tested.getRuleId().getTestNumber() + " " + tested.getMessage(),
                            1,
                            Integer::sum);
                }
            }
        } catch (ModelParsingException | EncryptedPdfException | ValidationException e) {
            throw new IOException("the validator cannot read " + pdf, e);
        }
        return failures;
    }
}

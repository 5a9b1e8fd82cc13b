// Holds PDF files against every rule of PDF/UA-1 (ISO 14289-1) that a machine can check, by veraPDF's engine and its published profile.
//
//     javac -cp "$VERAPDF" -d OUT tools/PdfUa.java && java -cp "$VERAPDF:OUT" PdfUa FILE.pdf ...
//
// with veraPDF's "greenfield" validation jars and a JAXB 2.3 runtime in VERAPDF. Exits with 1 if a file breaks a rule.

import java.io.FileInputStream;
import java.util.Map;
import java.util.TreeMap;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

public class PdfUa {
    public static void main(String[] files) throws Exception {
        VeraGreenfieldFoundryProvider.initialise();
        boolean all = true;
        for (String file : files) {
            try (PDFAParser parser = Foundries.defaultInstance().createParser(new FileInputStream(file), PDFAFlavour.PDFUA_1)) {
                PDFAValidator validator = Foundries.defaultInstance().createValidator(PDFAFlavour.PDFUA_1, 100_000, false, false, false);
                ValidationResult result = validator.validate(parser);
                System.out.println((result.isCompliant() ? "pass " : "FAIL ") + file + ", " + result.getTotalAssertions() + " checks");
                Map<String, String> broken = new TreeMap<>();
                for (TestAssertion one : result.getTestAssertions()) {
                    if (one.getStatus() != TestAssertion.Status.FAILED) continue;
                    String rule = one.getRuleId().getClause() + "-" + one.getRuleId().getTestNumber();
                    broken.putIfAbsent(rule, one.getMessage() + " at " + one.getLocation().getContext());
                }
                broken.forEach((rule, first) -> System.out.println("  " + rule + ": " + first));
                all &= result.isCompliant();
            }
        }
        System.exit(all ? 0 : 1);
    }
}

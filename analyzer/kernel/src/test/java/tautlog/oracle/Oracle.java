package tautlog.oracle;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import tautlog.detect.Finding;

/** Everything that {@code FINDINGS.md} says of an outing, worked out slowly: one part for each paragraph, in the page's order. */
final class Oracle {
    /** Lists findings in an order that is the same whoever found them. */
    static final Comparator<Finding> LISTED = Comparator.comparingLong(Finding::startNumber)
            .thenComparing(Finding::kind)
            .thenComparing(Finding::toString);

    static final Comparator<Answers.Cycle> CYCLES = Comparator.comparingLong(Answers.Cycle::rangeCounts)
            .thenComparingLong(Answers.Cycle::twiceMeanCounts)
            .thenComparingInt(Answers.Cycle::halves);

    private Oracle() {}

    static Answers of(OutingData data) {
        Line line = new Line(data);
        ShaftSpeed shaft = new ShaftSpeed(line);
        List<Finding.Overload> overloads = new Overloads(line).all();
        List<Finding.Shock> shocks = new Shocks(line).all();
        List<Finding.Pull> pulls = new Pulls(line, shaft, overloads, shocks).all();

        List<Finding> findings = new ArrayList<>();
        findings.addAll(pulls);
        findings.addAll(overloads);
        findings.addAll(shocks);
        findings.addAll(new Jolts(line).all());
        findings.addAll(new Drops(line, shaft).all());
        findings.addAll(new Stalls(line, shaft, pulls).all());
        findings.addAll(new Troubles(line).all());
        findings.sort(LISTED);
        List<Answers.Cycle> cycles = new ArrayList<>();
        pulls.forEach(pull -> cycles.addAll(new Cycles(line).of(pull)));
        cycles.sort(CYCLES);
        return new Answers(
                findings, new SecondsTold(line, shaft).all(), cycles, shaft.told(), new Wear(line, shaft).all());
    }
}

package fettle.judgement;

import fettle.document.SchemaProblem;
import java.util.List;
import java.util.Set;

/**
 * What is told twice of one slip of a build: that it breaks the schema, and what comes of that.
 *
 * <p>Keeps the one that says what to write.
 *
 * @param problems where the build's document departs from the schema
 * @param findings what was found in a build of it
 */
record OneSlip(List<SchemaProblem> problems, List<Finding> findings) {

    private static final Set<String> OF_NAMES = Set.of("unknown-name", "no-such-slot");
    private static final String OF_NOTCHES = "rail-overlap";
    private static final String NOTCH = "/at";

    /** The findings without those that only follow from what the schema says of the same place. */
    List<Finding> kept() {
        return findings.stream().filter(finding -> problems.stream().noneMatch(problem -> follows(finding, problem))).toList();
    }

    /** What the schema says that a finding says better, since it names what is there. */
    List<SchemaProblem> needless() {
        return problems.stream().filter(problem -> findings.stream().anyMatch(finding -> alike(finding, problem) && advising(finding))).toList();
    }

    private static boolean follows(Finding finding, SchemaProblem problem) {
        return alike(finding, problem) && !advising(finding) || finding.rule().equals(OF_NOTCHES) && finding.where().stream()
                .anyMatch(place -> place.file().equals(problem.origin().file()) && problem.origin().pointer().equals(around(place.pointer()) + NOTCH));
    }

    private static boolean alike(Finding finding, SchemaProblem problem) {
        return OF_NAMES.contains(finding.rule()) && finding.where().stream().anyMatch(problem.origin()::coincides);
    }

    /** Whether it says what was probably meant. */
    private static boolean advising(Finding finding) {
        return finding.data().containsKey("near") || finding.data().containsKey("elsewhere");
    }

    private static String around(String pointer) {
        return pointer.substring(0, Math.max(0, pointer.lastIndexOf('/')));
    }
}

package fettle.judgement;

import fettle.catalog.Catalog;
import fettle.catalog.CatalogHead;
import fettle.catalog.Part;
import fettle.catalog.Waiver;
import fettle.engine.RuleIndex;
import fettle.engine.RuleInfo;
import fettle.engine.Unit;
import java.math.BigDecimal;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Applies a catalog's waivers to findings. */
final class Waivers {

    /** The topic whose rules tell what a patch changes, which is no fault to be accepted. */
    private static final String PATCH = "patch";

    /** The topics whose rules judge something other than a catalog by itself. */
    private static final Set<String> ELSEWHERE = Set.of("build", PATCH);

    /** The topic whose rules compare parts, so that one that wasn't read in full may hide a finding on any. */
    private static final String COMPARING = "worth";

    /** What is drawn on a platform on which nothing could be compared. */
    private static final String VOID = "void-platform";

    private final Map<String, Part> parts;
    private final Map<String, Part> platforms;
    private final boolean priced;
    private final List<Waiver> waivers;
    private final String patch;

    Waivers(Catalog catalog) {
        this.waivers = catalog.waivers();
        this.parts = bySubject(catalog.parts().values());
        this.platforms = bySubject(catalog.platforms().values());
        this.priced = catalog.head().flatMap(head -> Optional.ofNullable(catalog.currencies().get(head.currency()))).filter(base -> base.rate().compareTo(BigDecimal.ONE) == 0).isPresent();
        this.patch = catalog.head().map(CatalogHead::patch).orElse("");
    }

    private static Map<String, Part> bySubject(Collection<Part> entries) {
        return entries.stream().collect(Collectors.toMap(Part::subject, entry -> entry));
    }

    /** The findings, those that a waiver in force accepts being marked with its reason. */
    List<Finding> applied(Collection<Finding> drawn) {
        return drawn.stream()
                .map(finding -> waivers.stream()
                        .filter(waiver -> accepts(waiver, finding.rule(), finding.subject()))
                        .findFirst()
                        .map(waiver -> finding.waivedBecause(waiver.because()))
                        .orElse(finding))
                .toList();
    }

    /** What became of each waiver, given all that was drawn on the catalog. */
    List<WaiverUse> uses(Collection<Finding> drawn, RuleIndex rules, Reading reading, HalfRead halfRead) {
        // Where no platform has a build, or it isn't known what anything costs, it is no fault of a waiver that parts are not compared.
        boolean compared = priced && !drawn.stream().filter(finding -> finding.rule().equals(VOID)).map(Finding::subject).collect(Collectors.toSet()).containsAll(platforms.keySet());
        return waivers.stream().map(waiver -> {
            List<Finding> ofRule = drawn.stream().filter(finding -> finding.rule().equals(waiver.rule())).toList();
            List<String> subjects = ofRule.stream().map(Finding::subject).distinct().toList();
            boolean used = subjects.contains(waiver.subject());
            // Only told of one that accepts nothing.
            Optional<Part> entry = Optional.ofNullable(parts.getOrDefault(waiver.subject(), platforms.get(waiver.subject())));
            List<String> told = used ? List.of() : entry.map(named -> elsewhere(named, ofRule)).orElse(List.of());
            Map<Boolean, List<String>> others = (used ? List.<String>of() : entry.isPresent() ? told : subjects).stream()
                    .collect(Collectors.partitioningBy(subject -> accept(waiver.rule(), subject)));
            List<String> near = entry.isPresent() ? others.get(false) : NearSubjects.of(waiver.subject(), others.get(false));
            List<String> covered = !near.isEmpty() ? List.of() : entry.isPresent() ? others.get(true) : NearSubjects.of(waiver.subject(), others.get(true));
            return new WaiverUse(
                    waiver,
                    rules.find(waiver.rule()).map(rule -> judged(rule, waiver.subject(), compared, halfRead)).orElse(false),
                    rules.find(waiver.rule()).filter(rule -> rule.topic().equals(PATCH)).isPresent(),
                    used,
                    !told.isEmpty(),
                    expired(waiver),
                    patch,
                    Optional.of(near).filter(some -> !some.isEmpty()),
                    Optional.of(covered).filter(some -> !some.isEmpty()),
                    waivers.stream().takeWhile(other -> other != waiver).filter(other -> accepts(other, waiver.rule(), waiver.subject())).limit(1).toList(),
                    reading.flaws());
        }).toList();
    }

    /** The subjects of findings that an entry is among the places to look at of. */
    private static List<String> elsewhere(Part entry, List<Finding> findings) {
        return findings.stream().filter(finding -> finding.where().contains(entry.origin())).map(Finding::subject).distinct().sorted().toList();
    }

    private boolean judged(RuleInfo rule, String subject, boolean compared, HalfRead halfRead) {
        boolean known = !rule.topic().equals(COMPARING) || compared && (halfRead.parts().isEmpty() || !parts.containsKey(subject));
        return known && !rule.drlRules(Unit.JUDGEMENT).isEmpty() && !ELSEWHERE.contains(rule.topic());
    }

    /** Whether a waiver in force accepts what a rule draws on a subject. */
    boolean accept(String rule, String subject) {
        return waivers.stream().anyMatch(waiver -> accepts(waiver, rule, subject));
    }

    private boolean accepts(Waiver waiver, String rule, String subject) {
        return !expired(waiver) && waiver.rule().equals(rule) && waiver.subject().equals(subject);
    }

    private boolean expired(Waiver waiver) {
        return !patch.isEmpty() && waiver.until().map(until -> Patches.compare(patch, until) >= 0).orElse(false);
    }
}

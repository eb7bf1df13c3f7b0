package fettle.judgement;

import fettle.document.Origin;
import fettle.document.Places;
import fettle.engine.RuleBase;
import fettle.engine.RuleIndex;
import fettle.engine.RuleInfo;
import fettle.engine.Severity;
import fettle.engine.Unit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/** Runs the judgement rules over facts and results, and gives the findings back in a fixed order. */
public final class Judge {

    private static final Origin NOWHERE = new Origin("", 1, 1, "");

    /** The gravest first, then by place, rule and subject. */
    public static final Comparator<Finding> ORDER = Comparator.comparing(Finding::severity)
            .thenComparing(finding -> finding.where().isEmpty() ? NOWHERE : finding.where().get(0))
            .thenComparing(Finding::rule)
            .thenComparing(Finding::subject)
            .thenComparing(finding -> finding.data().toString());

    private final RuleBase rules;

    public Judge(RuleBase rules) {
        this.rules = rules;
    }

    /**
     * What the rules find in these facts; the same finding drawn twice is one.
     *
     * @param places of the documents that the facts come from
     */
    public List<Finding> judge(Collection<?> facts, Places places) {
        List<Draft> drafts = new ArrayList<>();
        FindingSink sink = new FindingSink() {
            @Override
            public Draft draw(String rule, String subject) {
                Draft draft = draft(rule, subject, places);
                drafts.add(draft);
                return draft;
            }

            @Override
            public Draft draw(String rule, Origin place) {
                return draw(rule, "document:" + places.document(place.file())).at(place);
            }
        };
        rules.run(Unit.JUDGEMENT, Map.of("findings", sink), facts);
        return sorted(drafts.stream().map(Draft::finish).toList());
    }

    /** A finding of a rule by name, for relations that a build breaks. */
    Draft draft(String rule, String subject, Places places) {
        RuleInfo info = rules.index().find(rule).orElseThrow(() -> new IllegalArgumentException("a rule draws findings as " + rule + ", and there is no rule of that name"));
        return new Draft(rule, subject, info.severity().orElse(Severity.ERROR), places);
    }

    /** The rules that judge. */
    RuleIndex rules() {
        return rules.index();
    }

    /** In the fixed order, each once. */
    public static List<Finding> sorted(Collection<Finding> findings) {
        List<Finding> once = new ArrayList<>();
        // Only findings that stand beside each other can be the same; to hash them all would be to look through all that they speak of.
        int alike = 0;
        for (Finding finding : findings.stream().sorted(ORDER).toList()) {
            alike = !once.isEmpty() && ORDER.compare(once.get(once.size() - 1), finding) == 0 ? alike : once.size();
            if (!once.subList(alike, once.size()).contains(finding)) {
                once.add(finding);
            }
        }
        return List.copyOf(once);
    }
}

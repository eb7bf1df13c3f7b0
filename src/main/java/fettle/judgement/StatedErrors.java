package fettle.judgement;

import fettle.catalog.Reference;
import fettle.engine.RuleBase;
import fettle.engine.RuleInfo;
import fettle.engine.Severity;
import java.util.ArrayList;
import java.util.List;

/** Finds the errors in what a catalog states, by which whatever is told from it may be wrong. What follows from statements is for {@link Lint} to judge. */
public final class StatedErrors {

    /** The topic of rules that judge what a catalog states. */
    private static final String TOPIC = "catalog";

    private final Judge judge;

    public StatedErrors(RuleBase rules) {
        this(new Judge(rules));
    }

    StatedErrors(Judge judge) {
        this.judge = judge;
    }

    /** The errors beside those of documents that can't be read, in order, with the catalog's waivers applied. */
    public List<Finding> of(CatalogReading reading) {
        return of(reading, CatalogFacts.written(reading, judge.rules()));
    }

    /** The same without mentions that lead nowhere, which are judged by what they named before. */
    List<Finding> besideMentions(CatalogReading reading) {
        return of(reading, CatalogFacts.written(reading, judge.rules()).stream().filter(fact -> !(fact instanceof Reference)).toList());
    }

    private List<Finding> of(CatalogReading reading, List<?> written) {
        List<Object> facts = new ArrayList<>(reading.documentFacts());
        facts.addAll(written);
        List<Finding> drawn = judge.judge(facts, reading.places()).stream().filter(finding -> finding.severity() == Severity.ERROR && topic(finding).equals(TOPIC)).toList();
        return new Waivers(reading.catalog()).applied(drawn);
    }

    private String topic(Finding finding) {
        return judge.rules().find(finding.rule()).map(RuleInfo::topic).orElse("");
    }
}

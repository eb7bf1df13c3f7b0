package fettle.judgement;

import fettle.catalog.Catalog;
import fettle.engine.RuleBase;
import java.util.ArrayList;
import java.util.List;

/** Finds everything wrong or doubtful in a catalog. */
public final class Lint {

    private final Judge judge;

    public Lint(RuleBase rules) {
        this.judge = new Judge(rules);
    }

    /** All findings on the catalog itself, in order, with its waivers applied. */
    public List<Finding> findings(CatalogReading reading) {
        Catalog catalog = reading.catalog();
        List<Object> facts = new ArrayList<>(reading.documentFacts());
        facts.addAll(CatalogFacts.of(reading, judge.rules()));
        Waivers waivers = new Waivers(catalog.head(), catalog.waivers(), judge.judge(facts, reading.places()));
        List<Finding> all = new ArrayList<>(waivers.findings());
        all.addAll(judge.judge(waivers.uses(), reading.places()));
        return Judge.sorted(all);
    }
}

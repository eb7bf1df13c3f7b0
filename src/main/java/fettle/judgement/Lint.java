package fettle.judgement;

import fettle.document.Places;
import fettle.engine.RuleBase;
import java.util.ArrayList;
import java.util.List;

/** Finds everything wrong or doubtful in a catalog. */
public final class Lint {

    private final Judge judge;

    public Lint(RuleBase rules) {
        this.judge = new Judge(rules);
    }

    /** What can be found without looking at all builds: in a moment, for someone who is typing. Each of these is among {@link #findings} too. */
    public List<Finding> quick(CatalogReading reading) {
        List<Object> facts = new ArrayList<>(reading.documentFacts());
        facts.addAll(CatalogFacts.written(reading, judge.rules()));
        return new Waivers(reading.catalog()).applied(judge.judge(facts, reading.places()));
    }

    /** The findings on some things in the catalog, in order, with its waivers applied. */
    public List<Finding> on(Scope scope, CatalogReading reading, Standings standings) {
        List<Object> facts = new ArrayList<>(reading.documentFacts());
        facts.addAll(CatalogFacts.on(scope, reading, judge.rules(), standings));
        List<Finding> drawn = judge.judge(facts, reading.places());
        return Judge.sorted(new Waivers(reading.catalog()).applied(drawn).stream().filter(finding -> scope.takes(finding.subject())).toList());
    }

    /** All findings on the catalog itself, in order, with its waivers applied. */
    public List<Finding> findings(CatalogReading reading) {
        List<Object> facts = new ArrayList<>(reading.documentFacts());
        facts.addAll(CatalogFacts.of(reading, judge.rules()));
        Places places = reading.places();
        List<Finding> drawn = judge.judge(facts, places);
        Waivers waivers = new Waivers(reading.catalog());
        List<Finding> all = new ArrayList<>(waivers.applied(drawn));
        all.addAll(judge.judge(waivers.uses(drawn, judge.rules(), Reading.of(reading), reading.halfRead()), places));
        return Judge.sorted(all);
    }
}

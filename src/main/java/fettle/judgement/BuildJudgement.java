package fettle.judgement;

import fettle.catalog.Fact;
import fettle.document.Places;
import fettle.space.BuildCheck;
import fettle.space.BuildResult;
import fettle.space.Chain;
import fettle.space.Detours;
import fettle.space.Placement;
import fettle.space.Violation;
import java.util.ArrayList;
import java.util.List;

/**
 * Draws the findings of one build. A broken relation is a finding of the rule that derived it; all else is judged by rules over the build's
 * results.
 */
final class BuildJudgement {

    private static final int CHAINS_TOLD = 3;

    private final Judge judge;
    private final CatalogReading reading;
    private final BuildReading asRead;
    private final Places places;
    private final Names names;
    private final Detours detours;

    BuildJudgement(Judge judge, CatalogReading reading, Places places) {
        this.judge = judge;
        this.reading = reading;
        this.asRead = new BuildReading(Reading.of(reading));
        this.places = places;
        this.names = new Names(reading.catalog(), judge.rules());
        this.detours = new Detours(reading.relations());
    }

    List<Finding> findings(BuildResult result, BuildCheck check) {
        List<Finding> findings = new ArrayList<>();
        result.placement().ifPresent(placement -> result.violations().stream()
                .filter(violation -> !placement.onlyDoubtful(violation))
                .forEach(violation -> findings.add(broken(result, check, placement, violation))));
        List<Object> facts = new ArrayList<>(BuildFacts.of(reading.catalog(), asRead, names, check.prices(result.build()), result));
        facts.addAll(Advising.facts(reading, check, result));
        findings.addAll(judge.judge(facts, places));
        return Judge.sorted(findings);
    }

    private Finding broken(BuildResult result, BuildCheck check, Placement placement, Violation violation) {
        Draft draft = judge.draft(violation.rule(), result.build().subject(), places);
        violation.data().forEach(draft::with);
        violation.parts().stream().filter(part -> part != Placement.PLATFORM).forEach(part -> draft.at(placement.parts().get(part).entry().origin()));
        if (violation.parts().contains(Placement.PLATFORM)) {
            // The catalog's line of a platform is the same for all builds on it, so what can be changed in this one is pointed at.
            violation.slots().stream().flatMap(slot -> placement.slots().get(slot).occupants().stream()).forEach(part -> draft.at(placement.parts().get(part).entry().origin()));
            draft.at(result.build().platform().origin());
        }
        for (Fact fact : violation.because()) {
            draft.because(fact);
        }
        if (violation.parts().isEmpty()) {
            // Nothing stands there to be pointed at, so what should carry it is.
            violation.slots().stream().map(slot -> placement.slots().get(slot).owner()).forEach(owner ->
                    draft.at(owner == Placement.PLATFORM ? result.build().platform().origin() : placement.parts().get(owner).entry().origin()));
            if (violation.slots().isEmpty()) {
                draft.at(result.build().platform().origin());
            }
        }
        if (violation.rule().equals("does-not-fit")) {
            List<Chain> found = detours.of(check, placement, result.violations(), violation, CHAINS_TOLD);
            found.forEach(draft::because);
            draft.with("adapters", found.stream().map(chain -> chain.links().get(0).part()).distinct().toList());
        }
        return draft.finish();
    }
}

package fettle.judgement;

import fettle.catalog.Catalog;
import fettle.space.BuildResult;
import java.util.ArrayList;
import java.util.List;

/** Lays one build and its results out as the facts that judgement rules match. */
final class BuildFacts {

    private BuildFacts() {}

    static List<Object> of(Catalog catalog, BuildResult result) {
        List<Object> facts = new ArrayList<>();
        facts.add(result.build());
        catalog.head().ifPresent(facts::add);
        result.placement().ifPresent(placement -> facts.addAll(placement.unresolved()));
        facts.addAll(result.limits());
        result.unobtainable().forEach(facts::add);
        return facts;
    }
}

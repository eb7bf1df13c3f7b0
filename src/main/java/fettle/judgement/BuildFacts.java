package fettle.judgement;

import fettle.catalog.Catalog;
import fettle.space.BuildCheck;
import fettle.space.BuildResult;
import java.util.ArrayList;
import java.util.List;

/** Lays one build and its results out as the facts that judgement rules match. */
final class BuildFacts {

    private BuildFacts() {}

    static List<Object> of(Catalog catalog, Names names, BuildResult result, BuildCheck check) {
        List<Object> facts = new ArrayList<>();
        facts.add(result.build());
        catalog.head().ifPresent(facts::add);
        List<BuildMention> mentions = BuildMention.of(result.build());
        facts.addAll(mentions);
        facts.addAll(names.facts(mentions.stream().map(BuildMention::reference).toList()));
        result.placement().ifPresent(placement -> facts.addAll(placement.unresolved()));
        facts.addAll(result.limits());
        result.unobtainable().forEach(facts::add);
        return facts;
    }
}

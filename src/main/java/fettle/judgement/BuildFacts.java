package fettle.judgement;

import fettle.catalog.Build;
import fettle.catalog.Catalog;
import fettle.space.BuildResult;
import fettle.space.CloseLimit;
import fettle.space.ExceededLimit;
import fettle.space.Prices;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Lays one build and its results out as the facts that judgement rules match. */
final class BuildFacts {

    private BuildFacts() {}

    /** The facts of one build, given the prices that are open to who buys it. */
    static List<Object> of(Catalog catalog, BuildReading reading, Names names, Optional<Prices> open, BuildResult result) {
        Build build = result.build();
        List<Object> facts = new ArrayList<>();
        facts.add(build);
        facts.add(reading);
        catalog.head().ifPresent(head -> build.patch().ifPresent(patch -> facts.add(new BuildPatch(build, patch, head))));
        List<BuildMention> mentions = BuildMention.of(build);
        facts.addAll(mentions);
        facts.addAll(names.facts(mentions.stream().map(BuildMention::reference).toList()));
        result.placement().ifPresent(placement -> facts.addAll(placement.unresolved()));
        // With a part that could not be placed, what the rest comes to says nothing about the build that was meant.
        if (result.resolved()) {
            facts.addAll(result.limits());
            facts.addAll(CloseLimit.of(catalog, result));
            facts.addAll(ExceededLimit.of(catalog, result));
        }
        open.flatMap(prices -> Spending.of(catalog, prices, result)).ifPresent(facts::add);
        facts.addAll(Unobtainable.of(catalog, result));
        return facts;
    }
}

package fettle.judgement;

import fettle.catalog.Catalog;
import fettle.catalog.Lens;
import fettle.catalog.Part;
import fettle.space.BetweenRungs;
import fettle.space.Landscape;
import fettle.space.worth.Middles;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Gathers the parts that lie between the rungs of each lens's ladders wherever they are of use, and what was not decided of them, as the facts that judgement rules match. */
final class MiddleFacts {

    private MiddleFacts() {}

    /**
     * The facts.
     *
     * @param lenses the lenses to weigh by
     */
    static List<Object> of(Catalog catalog, HalfRead halfRead, Collection<Lens> lenses, Landscape landscape, Middles middles) {
        Set<String> measured = WorthFacts.measured(catalog, halfRead);
        Obscure obscure = Obscure.of(landscape);
        SortedMap<String, List<BetweenRungs>> between = new TreeMap<>();
        List<Object> facts = new ArrayList<>();
        middles.of(lenses).forEach(outcome -> {
            Lens lens = outcome.lens();
            outcome.between().forEach((part, found) -> between.computeIfAbsent(part, unused -> new ArrayList<>()).addAll(found));
            List<String> open = outcome.open().stream().filter(measured::contains).toList();
            outcome.why().filter(why -> !open.isEmpty())
                    .ifPresent(why -> facts.add(new LeftOpen("lens:" + lens.id(), lens.origin(), "in each slot something else gives more for the price than", open, why)));
        });
        between.forEach((id, found) -> {
            Part part = catalog.parts().get(id);
            if (measured.contains(id) && !obscure.parts().contains(id) && found.stream().noneMatch(each -> doubtful(each, halfRead))) {
                facts.add(new MiddlePart(part, found.stream().map(BetweenRungs::lens).distinct().toList(), found));
            }
        });
        return facts;
    }

    private static boolean doubtful(BetweenRungs between, HalfRead halfRead) {
        return Stream.of(between.shown(), between.lower(), between.upper()).anyMatch(offer -> halfRead.in(offer.assembly()));
    }
}

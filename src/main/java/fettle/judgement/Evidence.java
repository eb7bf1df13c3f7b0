package fettle.judgement;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.catalog.Fact;
import fettle.catalog.FactList;
import fettle.catalog.Offer;
import fettle.catalog.Part;
import fettle.catalog.Stat;
import fettle.space.BuildResult;
import fettle.space.PricedOffer;
import fettle.space.best.Mainstay;
import fettle.space.best.Prospect;
import fettle.space.best.Purchase;
import fettle.space.best.Shopping;
import fettle.space.best.Weighing;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;

/** Shows by what a catalog states how assemblies in a place of a build differ: what their parts cost, and their figures. */
record Evidence(BuildResult result, Weighing weighing, Shopping shopping) {

    /** By what is weighed: the lens, and what is worn. */
    List<Fact> terms() {
        FactList facts = new FactList().add(weighing.lens());
        weighing.outfit().ifPresent(facts::add);
        return facts.list();
    }

    /** By attribute, what keeps totals that a swap alone would leave worse. */
    SortedMap<String, Mainstay> held(Prospect swap) {
        return Mainstay.of(weighing, result, swap);
    }

    /** What a swap puts in, in words, with where each part goes unless there is one way alone; an empty slot is told as such. */
    String put(Prospect swap) {
        SortedMap<String, String> to = swap.to();
        boolean one = to.size() < 2 || to.size() == 2 && weighing.catalog().parts().get(to.get("")).slots().size() < 2;
        return one ? Assemblies.words(to) : Assemblies.placed(swap.path(), to);
    }

    /** Where what a change needs is cheapest. */
    List<Fact> bought(Prospect swap) {
        FactList facts = new FactList();
        swap.buy().forEach(purchase -> purchase.offer().ifPresent(priced -> add(facts, priced.offer())));
        return facts.list();
    }

    /** The same by part, vendor and tier. */
    static List<String> sources(Prospect swap) {
        return swap.buy().stream().filter(purchase -> purchase.offer().isPresent()).map(Evidence::source).distinct().toList();
    }

    private static String source(Purchase purchase) {
        Offer offer = purchase.offer().orElseThrow().offer();
        return purchase.part() + " from " + offer.vendor() + (offer.tiered() ? " at tier " + offer.tier() : "");
    }

    /** Where parts are cheapest; what is owned costs nothing. */
    List<Fact> prices(Collection<String> parts) {
        FactList facts = new FactList();
        parts.stream().filter(part -> !shopping.owned().contains(part)).forEach(part -> shopping.prices().cheapest(part).ifPresent(priced -> add(facts, priced.offer())));
        return facts.list();
    }

    private void add(FactList facts, Offer offer) {
        facts.add(offer).addAll(PricedOffer.basis(weighing.catalog(), offer));
    }

    /** What is stated in some attributes of the parts that one of these assemblies has and another has not, and of the platform where it is a share of that. */
    List<Fact> figures(Collection<String> attributes, List<? extends Collection<String>> assemblies) {
        Catalog catalog = weighing.catalog();
        FactList facts = new FactList();
        Map<String, Stat> bases = catalog.platforms().get(result.build().platform().id()).stats();
        attributes.stream().filter(id -> Optional.ofNullable(catalog.attributes().get(id)).filter(Attribute::basedOnPlatform).isPresent())
                .flatMap(id -> Optional.ofNullable(bases.get(id)).stream()).forEach(facts::add);
        for (Collection<String> assembly : assemblies) {
            assembly.stream().filter(part -> assemblies.stream().map(each -> times(part, each)).distinct().count() > 1).map(catalog.parts()::get)
                    .forEach(part -> figures(part, attributes, facts));
        }
        return facts.list();
    }

    private static long times(String part, Collection<String> assembly) {
        return assembly.stream().filter(part::equals).count();
    }

    private void figures(Part part, Collection<String> attributes, FactList facts) {
        for (Map<String, Stat> stats : result.build().loaded() ? List.of(part.stats(), part.loaded()) : List.of(part.stats())) {
            attributes.stream().flatMap(attribute -> Optional.ofNullable(stats.get(attribute)).stream()).forEach(facts::add);
        }
    }

    /** The figures that show what is kept by what. */
    List<Fact> holding(Prospect swap, SortedMap<String, Mainstay> held) {
        return figures(held.keySet(), List.of(swap.from().values(), swap.to().values(),
                held.values().stream().flatMap(mainstay -> mainstay.parts().values().stream()).distinct().toList()));
    }

    /** What the lens weighs. */
    Set<String> weighed() {
        return weighing.lens().weights().keySet();
    }
}

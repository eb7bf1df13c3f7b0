package fettle.space.best;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.catalog.Part;
import fettle.catalog.Stat;
import fettle.space.BuildResult;
import fettle.space.Occurrence;
import fettle.space.Totals;
import java.math.BigDecimal;
import java.util.Collection;
import java.util.Collections;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * What keeps a total from falling as far as a swap's own parts would let it. Only where the greatest or the least counts can parts elsewhere make up for what a swap
 * loses, and only as long as they stay.
 *
 * @param attribute as the lens sees it
 * @param total what it is with the swap made, no outfit worn
 * @param parts by path, each part elsewhere in the build that keeps it there
 */
public record Mainstay(Attribute attribute, BigDecimal total, SortedMap<String, String> parts) {

    public Mainstay {
        parts = Collections.unmodifiableSortedMap(new TreeMap<>(parts));
    }

    /** By attribute, what keeps the totals that what a swap puts in would leave worse by itself than what it takes out does. */
    public static SortedMap<String, Mainstay> of(Weighing weighing, BuildResult before, Prospect swap) {
        SortedMap<String, Mainstay> mainstays = new TreeMap<>();
        Turn.between(weighing, alone(weighing.catalog(), before, swap.from().values()), alone(weighing.catalog(), before, swap.to().values())).stream()
                .filter(turn -> !turn.better() && turn.attribute().ofOneAlone()).forEach(turn -> {
                    Optional<BigDecimal> total = Optional.ofNullable(swap.totals().get(turn.attribute().id()));
                    total.filter(held -> turn.after().map(own -> own.compareTo(held) != 0).orElse(true))
                            .ifPresent(held -> mainstays.put(turn.attribute().id(), of(weighing.catalog(), before, swap, turn.attribute(), held)));
                });
        return mainstays;
    }

    private static Mainstay of(Catalog catalog, BuildResult before, Prospect swap, Attribute attribute, BigDecimal total) {
        SortedMap<String, String> parts = new TreeMap<>();
        for (Occurrence there : before.placement().orElseThrow().parts()) {
            boolean elsewhere = !there.path().equals(swap.path()) && !there.path().startsWith(swap.path() + "/");
            if (elsewhere && figures(catalog.parts().get(there.part()), attribute, before.build().loaded()).anyMatch(figure -> figure.compareTo(total) == 0)) {
                parts.put(there.path(), there.part());
            }
        }
        return new Mainstay(attribute, total, parts);
    }

    private static Stream<BigDecimal> figures(Part part, Attribute attribute, boolean loaded) {
        return Stream.of(part.stats(), loaded ? part.loaded() : Map.<String, Stat>of()).map(stats -> stats.get(attribute.id())).filter(Objects::nonNull).map(Stat::value);
    }

    /** The totals if the platform held nothing else. */
    private static SortedMap<String, BigDecimal> alone(Catalog catalog, BuildResult before, Collection<String> parts) {
        Part platform = catalog.platforms().get(before.build().platform().id());
        return Totals.of(catalog, platform, parts.stream().map(catalog.parts()::get).filter(Objects::nonNull).toList(), before.build().loaded(), Optional.empty());
    }
}

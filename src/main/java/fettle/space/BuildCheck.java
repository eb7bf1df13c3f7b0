package fettle.space;

import fettle.catalog.Access;
import fettle.catalog.Build;
import fettle.catalog.Catalog;
import fettle.catalog.Limit;
import fettle.catalog.Outfit;
import fettle.catalog.Part;
import fettle.relation.Relations;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;

/** Checks builds against the relations of their catalog, and adds them up. May be shared between threads. */
public final class BuildCheck {

    private final Relations relations;
    private final Catalog catalog;
    private final Violations violations;
    private final Map<Optional<String>, Optional<Prices>> prices = new ConcurrentHashMap<>();

    /** A check that serves any number of builds of one catalog. */
    public BuildCheck(Relations relations) {
        this.relations = relations;
        this.catalog = relations.catalog();
        this.violations = new Violations(relations);
    }

    /** Checks one build. */
    public BuildResult check(Build build) {
        Part platform = catalog.platforms().get(build.platform().id());
        if (platform == null) {
            return new BuildResult(
                    build, Optional.empty(), List.of(), false, new TreeMap<>(), Optional.empty(), BigDecimal.ZERO, List.of(), List.of(), List.of());
        }
        Placement placement = Placement.of(relations, platform.id(), build.parts());
        return measured(build, platform, placement, violations.of(placement));
    }

    /** Checks one build, and measures it only where it is valid; empty where it isn't. */
    public Optional<BuildResult> checkValid(Build build) {
        Part platform = catalog.platforms().get(build.platform().id());
        if (platform == null) {
            return Optional.empty();
        }
        Placement placement = Placement.of(relations, platform.id(), build.parts());
        boolean valid = placement.unresolved().isEmpty() && violations.none(placement);
        return valid ? Optional.of(measured(build, platform, placement, List.of())) : Optional.empty();
    }

    /** The totals of a build on a platform of the catalog, as if all of its parts that the catalog has were placed. */
    public SortedMap<String, BigDecimal> totals(Build build) {
        return Totals.of(catalog, catalog.platforms().get(build.platform().id()), build.parts().stream().map(entry -> catalog.parts().get(entry.part())).filter(Objects::nonNull).toList(),
                build.loaded(), Optional.empty());
    }

    private BuildResult measured(Build build, Part platform, Placement placement, List<Violation> broken) {
        List<Part> placed = placement.parts().stream().map(occurrence -> catalog.parts().get(occurrence.part())).toList();
        Set<Part> unobtainable = new LinkedHashSet<>();
        Set<Part> unpriced = new LinkedHashSet<>();
        Optional<BigDecimal> obtainable = obtainable(build, placed, unobtainable, unpriced);
        boolean valid = broken.isEmpty() && placement.unresolved().isEmpty();
        SortedMap<String, BigDecimal> totals = Totals.of(catalog, platform, placed, build.loaded(), Optional.empty());
        Optional<Outfit> outfit = build.outfit().flatMap(worn -> Optional.ofNullable(catalog.outfits().get(worn.id())));
        return new BuildResult(
                build,
                Optional.of(placement),
                broken,
                valid,
                totals,
                placement.unresolved().isEmpty() && unobtainable.isEmpty() && unpriced.isEmpty() ? obtainable : Optional.empty(),
                obtainable.orElse(BigDecimal.ZERO),
                List.copyOf(unobtainable),
                List.copyOf(unpriced),
                limits(platform, placed, outfit, Map.of(build.loaded(), totals)));
    }

    /** Every relation that a placement breaks; with no unresolved entry either, it is valid. */
    public List<Violation> violations(Placement placement) {
        return violations.of(placement);
    }

    /** How placed parts stand to each limit of the catalog, with an outfit worn. */
    public List<LimitMargin> limits(Part platform, List<Part> placed, Optional<Outfit> outfit) {
        return limits(platform, placed, outfit, Map.of());
    }

    private List<LimitMargin> limits(Part platform, List<Part> placed, Optional<Outfit> outfit, Map<Boolean, SortedMap<String, BigDecimal>> bare) {
        Map<Boolean, SortedMap<String, BigDecimal>> totals = new HashMap<>();
        bare.forEach((loaded, known) -> totals.put(loaded, outfit.map(worn -> Totals.dressed(known, worn)).orElse(known)));
        List<LimitMargin> margins = new ArrayList<>();
        for (Limit limit : catalog.limits().values()) {
            margins.add(LimitMargin.of(limit, totals.computeIfAbsent(limit.loaded(), loaded -> Totals.of(catalog, platform, placed, loaded, outfit)), catalog));
        }
        return List.copyOf(margins);
    }

    /** The prices that a build's access profile opens; empty where the catalog doesn't have that profile, so that nobody knows what it opens. */
    public Optional<Prices> prices(Build build) {
        Optional<String> profile = build.access().map(Build.Located::id);
        return prices.computeIfAbsent(profile, named -> {
            Optional<Access> access = named.map(catalog.access()::get);
            return named.isPresent() && access.isEmpty() ? Optional.empty() : Optional.of(new Prices(catalog, access));
        });
    }

    /** What the parts cost that are owned or can be bought, and which can't; empty where it isn't known which offers are open. */
    private Optional<BigDecimal> obtainable(Build build, List<Part> placed, Set<Part> unobtainable, Set<Part> unpriced) {
        Optional<Prices> open = prices(build);
        if (open.isEmpty()) {
            return Optional.empty();
        }
        Set<String> owned = new HashSet<>();
        build.owned().forEach(part -> owned.add(part.id()));
        BigDecimal sum = BigDecimal.ZERO;
        for (Part part : placed) {
            if (!owned.contains(part.id())) {
                Optional<Prices.Priced> cheapest = open.get().cheapest(part.id());
                if (cheapest.isEmpty()) {
                    (open.get().obscure(part.id()) ? unpriced : unobtainable).add(part);
                } else {
                    sum = sum.add(cheapest.get().cost());
                }
            }
        }
        return Optional.of(sum);
    }
}

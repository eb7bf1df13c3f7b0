package fettle.space;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.catalog.Part;
import fettle.catalog.Stat;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.BiFunction;

/** Ranges of attributes over all valid builds of platforms. */
final class Ranges {

    private final Catalog catalog;
    private final Terrain terrain;
    private final Circuit circuit;
    private final int[] platforms;
    private final int[] roots;
    private final Sweep sweep;
    private final List<SortedMap<String, Range>> results = new ArrayList<>();

    /**
     * Ranges over some platforms.
     *
     * @param platforms their numbers
     * @param roots by platform, the circuit's node of all its builds; none is void
     * @param sweep the way up to the roots
     */
    Ranges(Catalog catalog, Terrain terrain, Circuit circuit, int[] platforms, int[] roots, Sweep sweep) {
        this.catalog = catalog;
        this.terrain = terrain;
        this.circuit = circuit;
        this.platforms = platforms;
        this.roots = roots;
        this.sweep = sweep;
        for (int i = 0; i < platforms.length; i++) {
            results.add(Collections.synchronizedSortedMap(new TreeMap<>()));
        }
    }

    /** What is to be asked of the circuit before the ranges are known, each by itself, the longest first. */
    List<Runnable> questions() {
        return catalog.attributes().values().stream()
                .sorted(Comparator.comparing(attribute -> attribute.combine() != Attribute.Combine.PRODUCT))
                .<Runnable>map(attribute -> () -> add(attribute)).toList();
    }

    /** By platform and attribute, of what has been asked; an attribute that has no value in any build is left out. */
    List<SortedMap<String, Range>> ranges() {
        return results;
    }

    private void add(Attribute attribute) {
        BigDecimal[] figures = new BigDecimal[terrain.parts()];
        for (int part = 0; part < figures.length; part++) {
            Part entry = catalog.parts().get(terrain.hosts().get(part));
            figures[part] = Optional.ofNullable(entry.stats().get(attribute.id())).map(Stat::value).orElse(null);
        }
        switch (attribute.combine()) {
            case SUM -> addSums(attribute, figures, (base, sums) -> Optional.of(sums.plus(Range.at(base.orElse(BigDecimal.ZERO)))));
            case PERCENT -> addSums(attribute, figures, (base, sums) -> base.map(value ->
                    Range.between(value.multiply(Totals.factor(sums.least())), value.multiply(Totals.factor(sums.greatest())))));
            case PRODUCT -> {
                for (int part = 0; part < figures.length; part++) {
                    figures[part] = figures[part] == null ? null : Totals.factor(figures[part]);
                }
                ProductRange products = new ProductRange(circuit, figures, sweep);
                add(attribute, (base, root) -> base.map(products.of(root)::times));
            }
            case MAX, MIN -> {
                PeakRange peaks = new PeakRange(circuit, figures, attribute.combine() == Attribute.Combine.MIN, sweep);
                add(attribute, (base, root) -> peaks.of(root, base));
            }
        }
    }

    private interface Total {
        Optional<Range> of(Optional<BigDecimal> base, int root);
    }

    private void addSums(Attribute attribute, BigDecimal[] figures, BiFunction<Optional<BigDecimal>, Range, Optional<Range>> total) {
        Optional<LongRanges> quick = LongRanges.of(circuit, figures, sweep);
        if (quick.isPresent()) {
            add(attribute, (base, root) -> total.apply(base, quick.get().of(root)));
        } else {
            Evaluation<Range> sums = Evaluation.of(circuit, new SumRange(figures), sweep);
            add(attribute, (base, root) -> total.apply(base, sums.of(root)));
        }
    }

    private void add(Attribute attribute, Total total) {
        for (int i = 0; i < platforms.length; i++) {
            SortedMap<String, Range> ranges = results.get(i);
            Part platform = catalog.platforms().get(terrain.hosts().get(platforms[i]));
            Optional<BigDecimal> base = Optional.ofNullable(platform.stats().get(attribute.id())).map(Stat::value);
            total.of(base, roots[i]).ifPresent(range -> ranges.put(attribute.id(), range.plain()));
        }
    }
}

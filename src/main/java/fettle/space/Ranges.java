package fettle.space;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.catalog.Part;
import fettle.catalog.Stat;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** Ranges of attributes over all valid builds of platforms. */
final class Ranges {

    private final Catalog catalog;
    private final Terrain terrain;
    private final Circuit circuit;
    private final int[] platforms;
    private final int[] roots;
    private final List<SortedMap<String, Range>> found = new ArrayList<>();

    /**
     * Ranges over some platforms.
     *
     * @param platforms their numbers
     * @param roots by platform, the circuit's node of all its builds; none is void
     */
    Ranges(Catalog catalog, Terrain terrain, Circuit circuit, int[] platforms, int[] roots) {
        this.catalog = catalog;
        this.terrain = terrain;
        this.circuit = circuit;
        this.platforms = platforms;
        this.roots = roots;
        for (int i = 0; i < platforms.length; i++) {
            found.add(new TreeMap<>());
        }
    }

    /** By platform and attribute; an attribute that has no value in any build is left out. */
    List<SortedMap<String, Range>> ranges() {
        catalog.attributes().values().forEach(this::add);
        return found;
    }

    private void add(Attribute attribute) {
        BigDecimal[] figures = new BigDecimal[terrain.parts()];
        for (int part = 0; part < figures.length; part++) {
            Part entry = catalog.parts().get(terrain.hosts().get(part));
            figures[part] = Optional.ofNullable(entry.stats().get(attribute.id())).map(Stat::value).orElse(null);
        }
        switch (attribute.combine()) {
            case SUM -> add(attribute, new SumRange(figures), (base, sums) -> Optional.of(sums.plus(Range.at(base.orElse(BigDecimal.ZERO)))));
            case PERCENT -> add(attribute, new SumRange(figures), (base, sums) -> base.map(value ->
                    Range.between(value.multiply(Totals.factor(sums.least())), value.multiply(Totals.factor(sums.greatest())))));
            case PRODUCT -> {
                for (int part = 0; part < figures.length; part++) {
                    figures[part] = figures[part] == null ? null : Totals.factor(figures[part]);
                }
                add(attribute, new ProductRange(figures), (base, products) -> base.map(value -> products.times(Range.at(value))));
            }
            case MAX, MIN -> {
                PeakRange peaks = new PeakRange(figures, attribute.combine() == Attribute.Combine.MIN);
                add(attribute, peaks, (base, found) -> base.map(value -> peaks.both(PeakRange.at(value), found)).orElse(found).range());
            }
        }
    }

    private interface Total<V> {
        Optional<Range> of(Optional<BigDecimal> base, V parts);
    }

    private <V> void add(Attribute attribute, Algebra<V> algebra, Total<V> total) {
        Evaluation<V> evaluation = Evaluation.of(circuit, algebra, roots);
        for (int i = 0; i < platforms.length; i++) {
            SortedMap<String, Range> ranges = found.get(i);
            Part platform = catalog.platforms().get(terrain.hosts().get(platforms[i]));
            Optional<BigDecimal> base = Optional.ofNullable(platform.stats().get(attribute.id())).map(Stat::value);
            total.of(base, evaluation.of(roots[i])).ifPresent(range -> ranges.put(attribute.id(), range.plain()));
        }
    }
}

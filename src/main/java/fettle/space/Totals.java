package fettle.space;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.catalog.Outfit;
import fettle.catalog.Part;
import fettle.catalog.Stat;
import java.math.BigDecimal;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Attribute totals of a set of placed parts on a platform, exact.
 *
 * <p>With base b and stats s: {@code sum} b + Σs; {@code percent} b × (1 + Σs/100); {@code product} b × Π(1 + s/100); {@code max} and {@code min}
 * of b and all s. An outfit multiplies the final value by 1 + effect/100. Percent modifiers that add up before they are applied to the base
 * are common practice in such games; no source is claimed.
 */
public final class Totals {

    private Totals() {}

    /** The totals by attribute; an attribute without a value, or whose base is missing, is left out. */
    public static SortedMap<String, BigDecimal> of(Catalog catalog, Part platform, Collection<Part> placed, boolean loaded, Optional<Outfit> outfit) {
        SortedMap<String, BigDecimal> bare = of(catalog.attributes().values(), platform, placed, loaded);
        return outfit.map(worn -> dressed(bare, worn)).orElse(bare);
    }

    /** The total of one attribute; empty where it has no value, or its base is missing. */
    public static Optional<BigDecimal> of(Attribute attribute, Part platform, Collection<Part> placed, boolean loaded, Optional<Outfit> outfit) {
        Optional<BigDecimal> bare = Optional.ofNullable(of(List.of(attribute), platform, placed, loaded).get(attribute.id()));
        return outfit.isEmpty() ? bare : bare.map(value -> dressed(value, outfit.get(), attribute.id()));
    }

    /** Totals with an outfit worn. */
    public static SortedMap<String, BigDecimal> dressed(SortedMap<String, BigDecimal> totals, Outfit outfit) {
        SortedMap<String, BigDecimal> dressed = new TreeMap<>(totals);
        dressed.replaceAll((attribute, value) -> dressed(value, outfit, attribute));
        return Collections.unmodifiableSortedMap(dressed);
    }

    /** A final value with an outfit worn. */
    public static BigDecimal dressed(BigDecimal value, Outfit outfit, String attribute) {
        return value.multiply(factor(outfit.effects().getOrDefault(attribute, BigDecimal.ZERO)));
    }

    private static SortedMap<String, BigDecimal> of(Collection<Attribute> attributes, Part platform, Collection<Part> placed, boolean loaded) {
        Map<String, Tally> tallies = new HashMap<>(2 * attributes.size());
        for (Attribute attribute : attributes) {
            tallies.put(attribute.id(), new Tally(attribute, Optional.ofNullable(platform.stats().get(attribute.id())).map(Stat::value)));
        }
        for (Part part : placed) {
            count(part.stats(), tallies);
            if (loaded) {
                count(part.loaded(), tallies);
            }
        }
        SortedMap<String, BigDecimal> totals = new TreeMap<>();
        tallies.forEach((attribute, tally) -> tally.total().ifPresent(value -> totals.put(attribute, value)));
        return Collections.unmodifiableSortedMap(totals);
    }

    private static void count(Map<String, Stat> stats, Map<String, Tally> tallies) {
        for (Stat stat : stats.values()) {
            Tally tally = tallies.get(stat.attribute());
            if (tally != null) {
                tally.add(stat.value());
            }
        }
    }

    /** One attribute being added up. */
    private static final class Tally {

        private final Attribute attribute;
        private final Optional<BigDecimal> base;
        private BigDecimal brought;

        Tally(Attribute attribute, Optional<BigDecimal> base) {
            this.attribute = attribute;
            this.base = base;
            this.brought = switch (attribute.combine()) {
                case SUM, PERCENT -> BigDecimal.ZERO;
                case PRODUCT -> BigDecimal.ONE;
                case MAX, MIN -> base.orElse(null);
            };
        }

        void add(BigDecimal value) {
            brought = switch (attribute.combine()) {
                case SUM, PERCENT -> brought.add(value);
                case PRODUCT -> brought.multiply(factor(value));
                case MAX -> brought == null ? value : brought.max(value);
                case MIN -> brought == null ? value : brought.min(value);
            };
        }

        Optional<BigDecimal> total() {
            return switch (attribute.combine()) {
                case SUM -> Optional.of(base.orElse(BigDecimal.ZERO).add(brought));
                case PERCENT -> base.map(value -> value.multiply(factor(brought)));
                case PRODUCT -> base.map(value -> value.multiply(brought));
                case MAX, MIN -> Optional.ofNullable(brought);
            };
        }
    }

    /** 1 + percent/100. */
    static BigDecimal factor(BigDecimal percent) {
        return BigDecimal.ONE.add(percent.movePointLeft(2));
    }
}

package fettle.space;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.catalog.Outfit;
import fettle.catalog.Part;
import fettle.catalog.Stat;
import java.math.BigDecimal;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
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
        SortedMap<String, BigDecimal> totals = new TreeMap<>();
        for (Attribute attribute : catalog.attributes().values()) {
            of(attribute, platform, placed, loaded, outfit).ifPresent(value -> totals.put(attribute.id(), value));
        }
        return Collections.unmodifiableSortedMap(totals);
    }

    /** The total of one attribute; empty where it has no value, or its base is missing. */
    public static Optional<BigDecimal> of(Attribute attribute, Part platform, Collection<Part> placed, boolean loaded, Optional<Outfit> outfit) {
        return total(attribute, platform, placed, loaded).map(value -> outfit.map(worn -> dressed(value, worn, attribute.id())).orElse(value));
    }

    /** A final value with an outfit worn. */
    public static BigDecimal dressed(BigDecimal value, Outfit outfit, String attribute) {
        return value.multiply(factor(outfit.effects().getOrDefault(attribute, BigDecimal.ZERO)));
    }

    private static Optional<BigDecimal> total(Attribute attribute, Part platform, Collection<Part> placed, boolean loaded) {
        Optional<BigDecimal> base = Optional.ofNullable(platform.stats().get(attribute.id())).map(Stat::value);
        BigDecimal sum = BigDecimal.ZERO;
        BigDecimal product = BigDecimal.ONE;
        Optional<BigDecimal> extreme = base;
        for (Part part : placed) {
            for (Stat stat : stats(attribute.id(), part, loaded)) {
                BigDecimal value = stat.value();
                switch (attribute.combine()) {
                    case SUM, PERCENT -> sum = sum.add(value);
                    case PRODUCT -> product = product.multiply(factor(value));
                    case MAX -> extreme = Optional.of(extreme.map(value::max).orElse(value));
                    case MIN -> extreme = Optional.of(extreme.map(value::min).orElse(value));
                }
            }
        }
        BigDecimal added = sum;
        BigDecimal multiplied = product;
        return switch (attribute.combine()) {
            case SUM -> Optional.of(base.orElse(BigDecimal.ZERO).add(added));
            case PERCENT -> base.map(value -> value.multiply(factor(added)));
            case PRODUCT -> base.map(value -> value.multiply(multiplied));
            case MAX, MIN -> extreme;
        };
    }

    /** The stats of a part that count: the plain one, and the loaded one in a loaded build. */
    private static Collection<Stat> stats(String attribute, Part part, boolean loaded) {
        Stat plain = part.stats().get(attribute);
        Stat full = loaded ? part.loaded().get(attribute) : null;
        if (plain == null) {
            return full == null ? List.of() : List.of(full);
        }
        return full == null ? List.of(plain) : List.of(plain, full);
    }

    /** 1 + percent/100. */
    static BigDecimal factor(BigDecimal percent) {
        return BigDecimal.ONE.add(percent.movePointLeft(2));
    }
}

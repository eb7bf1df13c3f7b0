package fettle.space;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.catalog.Part;
import fettle.catalog.Stat;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Optional;

/**
 * One attribute over the builds of a platform: what each part brings, how that adds up, and the total that it makes with the platform's base.
 *
 * @param figures by part, what it brings; {@code null} where it brings nothing to an extreme
 * @param base the platform's stat
 */
record Strand(Attribute attribute, BigDecimal[] figures, Optional<BigDecimal> base) {

    /** Which of two builds with the same rest a question asks for. */
    enum Wanted {
        LESS,
        MORE,
        /** Each value is a case of its own. */
        EACH;

        Wanted turned() {
            return this == LESS ? MORE : this == MORE ? LESS : EACH;
        }
    }

    static Strand of(Attribute attribute, Terrain terrain, Catalog catalog, Part platform, boolean loaded) {
        BigDecimal[] figures = new BigDecimal[terrain.parts()];
        for (int part = 0; part < figures.length; part++) {
            Part entry = catalog.parts().get(terrain.hosts().get(part));
            figures[part] = figure(attribute, entry.stats().get(attribute.id()));
            if (loaded) {
                figures[part] = both(attribute, figures[part], figure(attribute, entry.loaded().get(attribute.id())));
            }
        }
        return new Strand(attribute, figures, Optional.ofNullable(platform.stats().get(attribute.id())).map(Stat::value));
    }

    /** An attribute of which nothing is asked. */
    static Strand none(Attribute like, int parts) {
        BigDecimal[] figures = new BigDecimal[parts];
        Arrays.fill(figures, BigDecimal.ZERO);
        Attribute sum = new Attribute(
                like.id(), like.label(), like.unit(), like.better(), Attribute.Combine.SUM, like.decimals(), like.shown(), like.material(), like.origin());
        return new Strand(sum, figures, Optional.empty());
    }

    private static BigDecimal figure(Attribute attribute, Stat stat) {
        return stat == null ? nothing(attribute) : attribute.combine() == Attribute.Combine.PRODUCT ? Totals.factor(stat.value()) : stat.value();
    }

    /** What changes nothing; {@code null} for an extreme, of which there is none without a figure. */
    BigDecimal nothing() {
        return nothing(attribute);
    }

    private static BigDecimal nothing(Attribute attribute) {
        return switch (attribute.combine()) {
            case SUM, PERCENT -> BigDecimal.ZERO;
            case PRODUCT -> BigDecimal.ONE;
            case MAX, MIN -> null;
        };
    }

    /** What two things bring together; either may bring nothing. */
    BigDecimal both(BigDecimal one, BigDecimal other) {
        return both(attribute, one, other);
    }

    private static BigDecimal both(Attribute attribute, BigDecimal one, BigDecimal other) {
        if (one == null || other == null) {
            return one == null ? other : one;
        }
        return switch (attribute.combine()) {
            case SUM, PERCENT -> one.add(other);
            case PRODUCT -> one.multiply(other);
            case MAX -> one.max(other);
            case MIN -> one.min(other);
        };
    }

    /** The total where the parts together bring this. */
    Optional<BigDecimal> total(BigDecimal brought) {
        return switch (attribute.combine()) {
            case SUM -> Optional.of(base.orElse(BigDecimal.ZERO).add(brought));
            case PERCENT -> base.map(value -> value.multiply(Totals.factor(brought)));
            case PRODUCT -> base.map(value -> value.multiply(brought));
            case MAX, MIN -> Optional.ofNullable(both(brought, base.orElse(null)));
        };
    }

    /** What to want of the parts so as to get the wanted total. */
    Wanted wanted(Wanted total) {
        boolean turned = attribute.basedOnPlatform() && base.map(BigDecimal::signum).orElse(1) < 0;
        return attribute.combine() == Attribute.Combine.PRODUCT && !rising() ? Wanted.EACH : turned ? total.turned() : total;
    }

    /** Whether every factor keeps the order of what it is multiplied with. */
    private boolean rising() {
        for (BigDecimal figure : figures) {
            if (figure != null && figure.signum() < 0) {
                return false;
            }
        }
        return true;
    }
}

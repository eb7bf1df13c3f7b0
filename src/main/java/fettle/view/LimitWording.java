package fettle.view;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.catalog.Limit;
import fettle.space.Fraction;
import fettle.space.LimitMargin;
import java.util.Optional;

/** Says how a build stands to a limit. */
record LimitWording(Catalog catalog) {

    /** The total that the limit is about, or that it has none. */
    String value(LimitMargin limit) {
        return limit.value().map(value -> shown(limit.limit(), Fraction.of(value))).orElse("no value");
    }

    /** The bound for this build, or that it has none. */
    String bound(LimitMargin limit) {
        return limit.threshold().map(bound -> limit.limit().side().words() + " " + shown(limit.limit(), bound)).orElse("no bound");
    }

    /** What is left to the bound, or how far it is passed. */
    String margin(LimitMargin limit) {
        if (!limit.told()) {
            return "can't be told";
        }
        if (limit.margin().isEmpty()) {
            return "holds";
        }
        Fraction margin = limit.margin().get();
        if (margin.signum() == 0) {
            return "nothing to spare";
        }
        Fraction size = margin.signum() < 0 ? margin.negate() : margin;
        String amount = shown(limit.limit(), size);
        if (limit.holds()) {
            return amount + " to spare" + (limit.close() ? ", close" : "");
        }
        return amount + (limit.limit().side() == Limit.Side.AT_LEAST ? " too little" : " too much");
    }

    private String shown(Limit limit, Fraction value) {
        Optional<Attribute> attribute = Optional.ofNullable(catalog.attributes().get(limit.attribute()));
        return Figures.withUnit(Figures.rounded(value, attribute.map(Attribute::shown).orElse(2)), attribute);
    }
}

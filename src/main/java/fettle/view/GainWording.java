package fettle.view;

import fettle.catalog.Attribute;
import fettle.space.worth.Gain;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/** Words what one assembly gains over another: "+2 grip", "3,200 cheaper". */
final class GainWording {

    private GainWording() {}

    static String of(List<Gain> gains) {
        return Phrases.and(gains.stream().map(GainWording::of).toList());
    }

    static String of(Gain gain) {
        Optional<Attribute> found = gain.column().attribute();
        if (found.isEmpty()) {
            BigDecimal more = gain.after().orElseThrow().subtract(gain.before().orElseThrow());
            return Figures.money(more.abs()) + (more.signum() < 0 ? " cheaper" : " dearer");
        }
        Attribute attribute = found.get();
        String name = attribute.label() + (gain.column().loaded() ? " when loaded" : "");
        return switch (attribute.combine()) {
            case SUM -> Figures.withUnit(Figures.signed(difference(gain)), attribute.unit()) + " " + name;
            case PERCENT -> Figures.signed(difference(gain)) + " % " + name;
            case PRODUCT -> name + " times " + told(gain.after()) + " instead of " + told(gain.before());
            case MAX, MIN -> name + " " + told(gain.after()) + " instead of " + told(gain.before());
        };
    }

    private static BigDecimal difference(Gain gain) {
        return gain.after().orElseThrow().subtract(gain.before().orElseThrow());
    }

    private static String told(Optional<BigDecimal> figure) {
        return figure.map(fettle.space.Exact::text).orElse("none");
    }
}

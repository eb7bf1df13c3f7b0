package fettle.judgement;

import fettle.space.Exact;
import fettle.space.worth.Gain;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** Tells in short what one assembly gains over another, by attribute. */
final class GainWords {

    private GainWords() {}

    /** The difference where figures add up, and both figures where they don't. */
    static SortedMap<String, String> of(List<Gain> gains) {
        SortedMap<String, String> told = new TreeMap<>();
        gains.forEach(gain -> told.put(name(gain), words(gain)));
        return told;
    }

    private static String name(Gain gain) {
        return gain.column().attribute().map(attribute -> attribute.id() + (gain.column().loaded() ? " when loaded" : "")).orElse("cost");
    }

    private static String words(Gain gain) {
        boolean adds = gain.column().attribute().map(attribute -> switch (attribute.combine()) {
            case SUM, PERCENT -> true;
            case PRODUCT, MAX, MIN -> false;
        }).orElse(true);
        if (!adds) {
            return told(gain.after()) + " instead of " + told(gain.before());
        }
        BigDecimal more = gain.after().orElseThrow().subtract(gain.before().orElseThrow());
        return (more.signum() > 0 ? "+" : "") + Exact.text(more);
    }

    private static String told(Optional<BigDecimal> figure) {
        return figure.map(Exact::text).orElse("none");
    }
}

package fettle.space.worth;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.catalog.Part;
import fettle.catalog.Stat;
import fettle.space.Assembly;
import fettle.space.Prices;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Tells entry by entry in what one assembly differs from another that it dominates. */
public final class Gains {

    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    private final Catalog catalog;
    private final Prices prices;

    public Gains(Catalog catalog, Prices prices) {
        this.catalog = catalog;
        this.prices = prices;
    }

    /** What differs in a choice that is put in another's place, attribute by attribute; an empty choice holds nothing. Cost comes last, where both are sold. */
    public List<Gain> of(Optional<Assembly> before, Optional<Assembly> after) {
        List<Part> had = parts(before);
        List<Part> has = parts(after);
        List<Gain> gains = new ArrayList<>();
        for (Attribute attribute : catalog.attributes().values()) {
            if (attribute.better() != Attribute.Better.NONE) {
                for (boolean loaded : List.of(false, true)) {
                    Column column = new Column(Optional.of(attribute), loaded);
                    add(new Gain(column, contribution(column, attribute, had), contribution(column, attribute, has)), gains);
                }
            }
        }
        Optional<BigDecimal> paid = cost(had);
        Optional<BigDecimal> pays = cost(has);
        if (paid.isPresent() && pays.isPresent()) {
            add(new Gain(Column.COST, paid, pays), gains);
        }
        return gains;
    }

    /** What differs in a witness from the assembly that it shows to be dominated. */
    public List<Gain> of(Verdict.Dominated dominated) {
        return of(Optional.of(dominated.shown()), dominated.by());
    }

    /** Whether a witness costs more than the assembly that it shows to be dominated, or one of the two can't be bought. */
    public boolean dearer(Verdict.Dominated dominated) {
        Optional<BigDecimal> paid = cost(parts(Optional.of(dominated.shown())));
        Optional<BigDecimal> pays = cost(parts(dominated.by()));
        return paid.isEmpty() || pays.isEmpty() || pays.get().compareTo(paid.get()) > 0;
    }

    private static void add(Gain gain, List<Gain> gains) {
        boolean same = gain.before().isPresent() == gain.after().isPresent()
                && (gain.before().isEmpty() || gain.before().get().compareTo(gain.after().get()) == 0);
        if (!same) {
            gains.add(gain);
        }
    }

    private List<Part> parts(Optional<Assembly> choice) {
        return choice.map(assembly -> assembly.parts().stream().map(catalog.parts()::get).toList()).orElse(List.of());
    }

    private Optional<BigDecimal> cost(Collection<Part> parts) {
        BigDecimal sum = BigDecimal.ZERO;
        for (Part part : parts) {
            Optional<Prices.Priced> cheapest = prices.cheapest(part.id());
            if (cheapest.isEmpty()) {
                return Optional.empty();
            }
            sum = sum.add(cheapest.get().cost());
        }
        return Optional.of(sum);
    }

    private static Optional<BigDecimal> contribution(Column column, Attribute attribute, Collection<Part> parts) {
        Stream<BigDecimal> figures = parts.stream().map(part -> column.loaded() ? part.loaded() : part.stats())
                .flatMap(stats -> Optional.ofNullable(stats.get(attribute.id())).map(Stat::value).stream());
        return switch (attribute.combine()) {
            case SUM, PERCENT -> Optional.of(figures.reduce(BigDecimal.ZERO, BigDecimal::add));
            case PRODUCT -> Optional.of(figures.map(figure -> figure.add(HUNDRED).divide(HUNDRED)).reduce(BigDecimal.ONE, BigDecimal::multiply));
            case MAX -> figures.reduce(BigDecimal::max);
            case MIN -> figures.reduce(BigDecimal::min);
        };
    }
}

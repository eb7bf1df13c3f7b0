package fettle.space.worth;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.catalog.Lens;
import fettle.catalog.Part;
import fettle.catalog.Stat;
import fettle.space.Exact;
import fettle.space.Prices;
import fettle.space.Terrain;
import fettle.space.Undecided;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What each part costs, and what it brings by a lens, in whole steps. */
final class Worths {

    private static final int MOST_PLACES = 12;
    private static final BigDecimal TOO_MUCH = BigDecimal.valueOf(1L << 40);

    private final boolean[] sold;
    private final long[] costs;
    private final long[] benefits;
    private final int costPlaces;
    private final int benefitPlaces;

    private Worths(boolean[] sold, long[] costs, long[] benefits, int costPlaces, int benefitPlaces) {
        this.sold = sold;
        this.costs = costs;
        this.benefits = benefits;
        this.costPlaces = costPlaces;
        this.benefitPlaces = benefitPlaces;
    }

    /** Empty where figures are too long or too large for it. */
    static Optional<Worths> of(Catalog catalog, Terrain terrain, Lens lens, Prices prices) {
        List<BigDecimal> costs = new ArrayList<>();
        List<BigDecimal> benefits = new ArrayList<>();
        boolean[] sold = new boolean[terrain.parts()];
        for (int p = 0; p < sold.length; p++) {
            Part part = catalog.parts().get(terrain.hosts().get(p));
            Optional<Prices.Priced> cheapest = prices.cheapest(part.id());
            sold[p] = cheapest.isPresent();
            costs.add(cheapest.map(Prices.Priced::cost).orElse(BigDecimal.ZERO));
            benefits.add(benefit(catalog, lens, part));
        }
        int costPlaces = places(costs);
        int benefitPlaces = places(benefits);
        return fits(costs, costPlaces) && fits(benefits, benefitPlaces)
                ? Optional.of(new Worths(sold, steps(costs, costPlaces), steps(benefits, benefitPlaces), costPlaces, benefitPlaces))
                : Optional.empty();
    }

    /** Which figure it is that {@link #of} can't reckon with: the longest of all. */
    static Undecided tooLong(Catalog catalog, Terrain terrain, Lens lens, Prices prices) {
        int most = -1;
        Undecided longest = new Undecided("Its figures are too long.", "lens:" + lens.id());
        for (int p = 0; p < terrain.parts(); p++) {
            Part part = catalog.parts().get(terrain.hosts().get(p));
            BigDecimal cost = prices.cheapest(part.id()).map(Prices.Priced::cost).orElse(BigDecimal.ZERO);
            BigDecimal benefit = benefit(catalog, lens, part);
            if (digits(cost) > most) {
                most = digits(cost);
                longest = new Undecided("It costs " + Exact.text(cost) + ", which is too long a figure.", part.subject());
            }
            if (digits(benefit) > most) {
                most = digits(benefit);
                longest = new Undecided("By lens:" + lens.id() + " it brings " + Exact.text(benefit) + ", which is too long a figure.", part.subject());
            }
        }
        return longest;
    }

    /** How many digits a figure has where it is written out. */
    private static int digits(BigDecimal figure) {
        BigDecimal plain = figure.stripTrailingZeros();
        return Math.max(0, plain.precision() - plain.scale()) + Math.max(0, plain.scale());
    }

    /** The lens's weights times what the part contributes, higher being better. */
    static BigDecimal benefit(Catalog catalog, Lens lens, Part part) {
        BigDecimal benefit = BigDecimal.ZERO;
        for (Map.Entry<String, BigDecimal> weight : lens.weights().entrySet()) {
            Attribute attribute = catalog.attributes().get(weight.getKey());
            Stat stat = part.stats().get(weight.getKey());
            if (attribute != null && stat != null && attribute.addsUp()) {
                BigDecimal weighed = stat.value().multiply(weight.getValue());
                benefit = attribute.better() == Attribute.Better.LOWER ? benefit.subtract(weighed) : benefit.add(weighed);
            }
        }
        return benefit;
    }

    private static int places(List<BigDecimal> figures) {
        return figures.stream().mapToInt(figure -> Math.max(0, figure.stripTrailingZeros().scale())).max().orElse(0);
    }

    private static boolean fits(List<BigDecimal> figures, int places) {
        return places <= MOST_PLACES && figures.stream().allMatch(figure -> figure.movePointRight(places).abs().compareTo(TOO_MUCH) < 0);
    }

    private static long[] steps(List<BigDecimal> figures, int places) {
        return figures.stream().mapToLong(figure -> figure.movePointRight(places).longValueExact()).toArray();
    }

    boolean sold(int part) {
        return sold[part];
    }

    /** In whole steps. */
    long cost(int part) {
        return costs[part];
    }

    /** In whole steps. */
    long benefit(int part) {
        return benefits[part];
    }

    /** In base currency. */
    BigDecimal cost(long steps) {
        return BigDecimal.valueOf(steps, costPlaces);
    }

    /** As the lens counts. */
    BigDecimal benefit(long steps) {
        return BigDecimal.valueOf(steps, benefitPlaces);
    }
}

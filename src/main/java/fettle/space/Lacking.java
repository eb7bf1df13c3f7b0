package fettle.space;

import fettle.catalog.Catalog;
import fettle.catalog.Part;
import fettle.catalog.Stat;
import java.util.ArrayList;
import java.util.List;

/**
 * A part without a figure that more than half of its kind have.
 *
 * @param peers how many other parts there are of its kind
 * @param having those of them that have the figure, by size of the figure
 */
public record Lacking(Part part, String attribute, boolean loaded, int peers, List<Stat> having) {

    private static final int SHOWN = 3;

    public Lacking {
        having = List.copyOf(having);
    }

    /** The figure in words. */
    public String figure() {
        return attribute + (loaded ? " when loaded" : "");
    }

    /** The part's property that would state it. */
    public String property() {
        return loaded ? "loaded" : "stats";
    }

    /** The number of peers that have it. */
    public int count() {
        return having.size();
    }

    /** A few that have it. */
    public List<Stat> some() {
        return having.subList(0, Math.min(SHOWN, having.size()));
    }

    /** Every part that lacks what more than half of its kind have. */
    static List<Lacking> of(Catalog catalog) {
        List<Lacking> found = new ArrayList<>();
        for (Peers peers : Peers.of(catalog)) {
            int others = peers.members().size() - 1;
            if (2 * peers.stats().size() > others) {
                peers.silent().stream().filter(part -> !part.platform())
                        .forEach(part -> found.add(new Lacking(part, peers.attribute(), peers.loaded(), others, peers.stats())));
            }
        }
        return found;
    }
}

package fettle.view;

import fettle.catalog.Access;
import fettle.catalog.Part;
import fettle.catalog.SlotId;
import fettle.relation.Fit;
import fettle.relation.Relations;
import fettle.space.Approach;
import fettle.space.Chain;
import fettle.space.Prices;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/**
 * All that is known of one part or platform, from the relations and the offers.
 *
 * @param seats the slots it fits, by the ways in which it does
 * @param routes how it gets onto each platform that leads to it; none for a platform
 * @param ties what it clashes with, needs, serves and must agree with
 * @param holdings its own slots, with what fits each
 * @param open the offers that the access profile opens, cheapest first
 * @param closed the offers that it doesn't
 */
record PartAccount(Part part, List<Seat> seats, List<Route> routes, List<Tie> ties, List<Holding> holdings, List<Prices.Priced> open, List<Prices.Priced> closed) {

    private static final int MOST_CHAINS = 3;

    /** Slots that the part fits in the same ways. */
    record Seat(List<Fit> ways, List<SlotId> slots) {}

    /**
     * How a part gets onto a platform.
     *
     * @param chains the shortest, from the platform's slots outward
     * @param slots the platform's slots that lead to it, by however long a chain
     */
    record Route(Part platform, List<Chain> chains, List<SlotId> slots) {}

    /** A slot of the part with the parts that fit it. */
    record Holding(SlotId slot, List<String> parts) {}

    /** Gathers it. */
    static PartAccount of(Relations relations, Part part, Optional<Access> access) {
        Map<List<Fit>, List<SlotId>> seats = new LinkedHashMap<>();
        hosts(relations).flatMap(host -> relations.slots(host.id()).stream())
                .filter(slot -> relations.fits(slot, part.id()))
                .forEach(slot -> seats.computeIfAbsent(relations.ways(slot, part.id()), unused -> new ArrayList<>()).add(slot));
        List<SlotId> all = seats.values().stream().flatMap(List::stream).toList();
        Prices open = new Prices(relations.catalog(), access);
        List<Prices.Priced> offers = open.offers(part.id());
        List<Prices.Priced> closed = new ArrayList<>(new Prices(relations.catalog(), Optional.empty()).offers(part.id()));
        closed.removeAll(offers);
        return new PartAccount(
                part,
                seats.entrySet().stream().map(entry -> new Seat(entry.getKey(), List.copyOf(entry.getValue()))).toList(),
                part.platform() ? List.of() : routes(relations, part.id()),
                new Ties(relations, part.id(), all).all(),
                relations.slots(part.id()).stream().map(slot -> new Holding(slot, relations.candidates(slot))).toList(),
                offers,
                List.copyOf(closed));
    }

    private static Stream<Part> hosts(Relations relations) {
        return Stream.concat(relations.catalog().platforms().values().stream(), relations.catalog().parts().values().stream());
    }

    private static List<Route> routes(Relations relations, String part) {
        Approach approach = new Approach(relations, part);
        List<Route> routes = new ArrayList<>();
        for (Part platform : relations.catalog().platforms().values()) {
            List<SlotId> slots = relations.slots(platform.id()).stream().filter(slot -> approach.steps(slot).isPresent()).toList();
            OptionalInt least = slots.stream().mapToInt(slot -> approach.steps(slot).getAsInt()).min();
            if (least.isPresent()) {
                List<Chain> chains = slots.stream()
                        .filter(slot -> approach.steps(slot).getAsInt() == least.getAsInt())
                        .flatMap(slot -> approach.chains(slot, MOST_CHAINS).stream())
                        .limit(MOST_CHAINS)
                        .toList();
                routes.add(new Route(platform, chains, slots));
            }
        }
        return List.copyOf(routes);
    }
}

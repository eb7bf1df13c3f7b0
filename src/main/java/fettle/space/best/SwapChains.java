package fettle.space.best;

import fettle.catalog.BuildEntry;
import fettle.catalog.SlotId;
import fettle.document.Origin;
import fettle.relation.Relations;
import fettle.space.Occurrence;
import fettle.space.best.SwapTrial.Link;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** Thinks of the chains of parts that could stand in a slot, each part in a slot of the one before it: the shorter before the longer. */
final class SwapChains {

    /** The most chains thought of from one slot. */
    static final int MOST = 3_000;

    /** Parts in a chain as they mostly are: an adapter, a part on it, and a third on top. */
    static final int USUAL = 3;

    /** The most of those that have more parts; where there are more of a length, none of it is thought of, so that no part's name decides which. */
    static final int MOST_UNUSUAL = 200;

    /** Parts in a chain at most. */
    static final int LONGEST = 12;

    /**
     * A chain.
     *
     * @param links its parts, the head first
     * @param entries the same as entries of a build
     */
    record Chain(List<Link> links, List<BuildEntry> entries) {

        private Chain and(Link link, BuildEntry entry) {
            return new Chain(Stream.concat(links.stream(), Stream.of(link)).toList(), Stream.concat(entries.stream(), Stream.of(entry)).toList());
        }

        private boolean has(String part) {
            return links.stream().anyMatch(link -> link.part().equals(part));
        }
    }

    private final Relations relations;
    private final Origin origin;
    private final Predicate<String> usable;
    private boolean bounded;

    /**
     * Thinks of chains of usable parts.
     *
     * @param origin where the entries of the chains are said to be written
     */
    SwapChains(Relations relations, Origin origin, Predicate<String> usable) {
        this.relations = relations;
        this.origin = origin;
        this.usable = usable;
    }

    /**
     * The chains that may stand in a slot instead of what is there, and have another head.
     *
     * @param slotPath the slot's path
     * @param position where among the parts of the slot
     * @param path the path with the position in a slot that holds several
     */
    List<Chain> from(SlotId slot, String slotPath, int position, String path, Optional<Occurrence> there) {
        OptionalInt notch = there.map(Occurrence::at).orElse(OptionalInt.empty());
        List<Chain> chains = new ArrayList<>();
        List<Chain> begun = new ArrayList<>();
        for (String part : relations.candidates(slot)) {
            if (usable.test(part) && there.filter(old -> old.part().equals(part)).isEmpty()) {
                begun.add(new Chain(List.of(new Link(part, path)), List.of(new BuildEntry(slotPath, position, part, notch, origin, origin))));
            }
        }
        int left = MOST;
        for (int length = 1; !begun.isEmpty() && !bounded; length++) {
            bounded = begun.size() > left || length > LONGEST;
            if (!bounded || length <= USUAL) {
                chains.addAll(begun.subList(0, Math.min(left, begun.size())));
            }
            left -= begun.size();
            left = length == USUAL ? Math.min(left, MOST_UNUSUAL) : left;
            begun = bounded ? List.of() : longer(begun, left);
        }
        return chains;
    }

    /** Whether not every chain was thought of, since there are too many. */
    boolean bounded() {
        return bounded;
    }

    /** The chains that are longer by one; where there are more than so many, one more of them. */
    private List<Chain> longer(List<Chain> begun, int most) {
        List<Chain> longer = new ArrayList<>();
        for (Chain chain : begun) {
            Link last = chain.links().get(chain.links().size() - 1);
            for (SlotId slot : relations.slots(last.part())) {
                String slotPath = last.path() + "/" + slot.slot();
                String path = relations.room(slot).most() > 1 ? slotPath + ":0" : slotPath;
                for (String part : relations.candidates(slot)) {
                    if (longer.size() > most) {
                        return longer;
                    }
                    if (usable.test(part) && !chain.has(part)) {
                        longer.add(chain.and(new Link(part, path), new BuildEntry(slotPath, 0, part, OptionalInt.empty(), origin, origin)));
                    }
                }
            }
        }
        return longer;
    }
}

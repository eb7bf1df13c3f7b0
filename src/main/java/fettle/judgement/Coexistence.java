package fettle.judgement;

import fettle.catalog.Part;
import fettle.catalog.SlotId;
import fettle.relation.Relations;
import fettle.space.Space;
import fettle.space.Together;
import java.util.Collection;
import java.util.List;

/**
 * Whether something can be in a valid build of a platform.
 *
 * @param asked the ids of what was asked for: parts, or one slot; none asks whether there is a valid build at all
 */
public record Coexistence(Part platform, List<String> asked, Together answer) {

    public Coexistence {
        asked = List.copyOf(asked);
    }

    /** Parts together, on each of these platforms. */
    public static List<Coexistence> ofParts(Relations relations, Collection<Part> platforms, List<String> parts) {
        Space space = Space.of(relations);
        return platforms.stream().map(platform -> new Coexistence(platform, parts, space.together(platform.id(), parts))).toList();
    }

    /** A part in a slot, on each of these platforms. */
    public static List<Coexistence> ofSlot(Relations relations, Collection<Part> platforms, SlotId slot) {
        Space space = Space.of(relations);
        return platforms.stream().map(platform -> new Coexistence(platform, List.of(slot.toString()), space.inUse(platform.id(), slot))).toList();
    }

    /** The platforms that lead to all of these parts; all platforms, where none does. */
    public static List<Part> platformsFor(Relations relations, Collection<String> parts) {
        Space space = Space.of(relations);
        List<Part> all = List.copyOf(relations.catalog().platforms().values());
        List<Part> leading = all.stream().filter(platform -> space.leadsTo(platform.id(), parts)).toList();
        return leading.isEmpty() ? all : leading;
    }
}

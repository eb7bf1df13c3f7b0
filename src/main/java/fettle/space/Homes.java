package fettle.space;

import fettle.catalog.Fact;
import fettle.catalog.FactList;
import fettle.catalog.HasMount;
import fettle.catalog.Part;
import fettle.catalog.SlotId;
import fettle.relation.Relations;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/**
 * Where a part can sit.
 *
 * @param slots all slots of the catalog that it fits, in order
 * @param reached whether a chain of fits leads from some platform to it
 * @param refusing the slots that keep it out although it would fit them otherwise; told only of a part that fits none
 * @param because the entries that show it, for a part that fits no slot or is not reached
 */
public record Homes(Part part, List<SlotId> slots, boolean reached, List<SlotId> refusing, List<Fact> because) {

    private static final int SLOTS_SHOWN = 3;

    public Homes {
        slots = List.copyOf(slots);
        refusing = List.copyOf(refusing);
        because = List.copyOf(because);
    }

    /** The number of slots that it fits. */
    public int count() {
        return slots.size();
    }

    /** The mounts by which the part can be attached. */
    public List<String> mounts() {
        return part.mounts().stream().map(HasMount::mount).toList();
    }

    /** The hosts of these slots, in order. */
    public List<String> hosts() {
        return slots.stream().map(SlotId::host).distinct().toList();
    }

    /** The homes of every part of the catalog. */
    static List<Homes> of(Relations relations, Terrain terrain, List<Reach> reaches) {
        List<List<SlotId>> slots = new ArrayList<>();
        for (int part = 0; part < terrain.parts(); part++) {
            slots.add(new ArrayList<>());
        }
        for (int slot = 0; slot < terrain.slots().size(); slot++) {
            for (int part : terrain.candidates()[slot]) {
                slots.get(part).add(terrain.slots().get(slot));
            }
        }
        BitSet reached = new BitSet();
        reaches.forEach(reach -> reached.or(reach.parts()));
        List<Homes> homes = new ArrayList<>();
        for (int part = 0; part < terrain.parts(); part++) {
            homes.add(of(relations, relations.catalog().parts().get(terrain.hosts().get(part)), slots.get(part).stream().sorted().toList(), reached.get(part), terrain.slots()));
        }
        return homes;
    }

    private static Homes of(Relations relations, Part part, List<SlotId> slots, boolean reached, List<SlotId> all) {
        if (reached) {
            return new Homes(part, slots, true, List.of(), List.of());
        }
        List<SlotId> refusing = slots.isEmpty() ? all.stream().filter(slot -> !relations.refusals(slot, part.id()).isEmpty()).sorted().toList() : List.of();
        FactList because = new FactList();
        if (slots.isEmpty()) {
            because.addAll(part.mounts());
            refusing.stream().limit(SLOTS_SHOWN).forEach(slot -> because.addAll(relations.against(slot, part.id())));
            if (because.list().isEmpty()) {
                because.add(part);
            }
        } else {
            slots.stream().limit(SLOTS_SHOWN).forEach(slot -> because.addAll(relations.because(slot, part.id(), relations.ways(slot, part.id()).get(0))));
        }
        return new Homes(part, slots, false, refusing, because.list());
    }
}

package fettle.relation;

import fettle.catalog.Catalog;
import fettle.catalog.HasMount;
import fettle.catalog.HasName;
import fettle.catalog.Part;
import fettle.catalog.Slot;
import fettle.catalog.SlotAccepts;
import fettle.catalog.SlotHasMount;
import fettle.catalog.SlotId;
import fettle.catalog.SlotRejects;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * Sorts slots and parts into shapes: all that share what they offer and ask for when it comes to fitting. Rules on fitting then relate a few
 * hundred shapes instead of every slot to every part.
 */
public final class Shapes {

    /** Slots of this shape offer a mount. */
    public record SlotMount(int slots, String mount) {}

    /** Slots of this shape accept a name. */
    public record SlotAccept(int slots, String name) {}

    /** Slots of this shape reject a name. */
    public record SlotReject(int slots, String name) {}

    /** Parts of this shape have a mount. */
    public record PartMount(int parts, String mount) {}

    /** Parts of this shape answer to a name that some slot accepts or rejects. */
    public record PartName(int parts, String name) {}

    private final Map<SlotId, Integer> shapeOfSlot = new HashMap<>();
    private final Map<String, Integer> shapeOfPart = new HashMap<>();
    private final List<List<String>> partsOfShape = new ArrayList<>();
    private final List<Object> facts = new ArrayList<>();

    Shapes(Catalog catalog) {
        Map<List<Set<String>>, Integer> slotShapes = new HashMap<>();
        Set<String> asked = new HashSet<>();
        for (Map<String, Part> hosts : List.of(catalog.platforms(), catalog.parts())) {
            for (Part host : hosts.values()) {
                for (Slot slot : host.slots()) {
                    Set<String> mounts = names(slot.mounts(), SlotHasMount::mount);
                    Set<String> accepts = names(slot.accepts(), SlotAccepts::name);
                    Set<String> rejects = names(slot.rejects(), SlotRejects::name);
                    asked.addAll(accepts);
                    asked.addAll(rejects);
                    shapeOfSlot.put(slot.id(), slotShapes.computeIfAbsent(List.of(mounts, accepts, rejects), unused -> slotShape(mounts, accepts, rejects)).intValue());
                }
            }
        }
        Map<List<Set<String>>, Integer> partShapes = new HashMap<>();
        for (Part part : catalog.parts().values()) {
            Set<String> named = names(part.names(), HasName::name);
            named.retainAll(asked);
            Set<String> mounts = names(part.mounts(), HasMount::mount);
            int shape = partShapes.computeIfAbsent(List.of(mounts, named), unused -> partShape(mounts, named));
            shapeOfPart.put(part.id(), shape);
            partsOfShape.get(shape).add(part.id());
        }
    }

    private static <T> Set<String> names(List<T> items, java.util.function.Function<T, String> name) {
        Set<String> names = new TreeSet<>();
        items.forEach(item -> names.add(name.apply(item)));
        return names;
    }

    private int slots;

    private int slotShape(Set<String> mounts, Set<String> accepts, Set<String> rejects) {
        int shape = slots++;
        mounts.forEach(mount -> facts.add(new SlotMount(shape, mount)));
        accepts.forEach(name -> facts.add(new SlotAccept(shape, name)));
        rejects.forEach(name -> facts.add(new SlotReject(shape, name)));
        return shape;
    }

    private int partShape(Set<String> mounts, Set<String> names) {
        int shape = partsOfShape.size();
        partsOfShape.add(new ArrayList<>());
        mounts.forEach(mount -> facts.add(new PartMount(shape, mount)));
        names.forEach(name -> facts.add(new PartName(shape, name)));
        return shape;
    }

    /** What the rules on fitting match. */
    List<Object> facts() {
        return facts;
    }

    int of(SlotId slot) {
        return shapeOfSlot.getOrDefault(slot, -1);
    }

    int of(String part) {
        return shapeOfPart.getOrDefault(part, -1);
    }

    int slotShapes() {
        return slots;
    }

    List<String> parts(int shape) {
        return partsOfShape.get(shape);
    }
}

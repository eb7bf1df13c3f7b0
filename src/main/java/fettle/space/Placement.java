package fettle.space;

import fettle.catalog.BuildEntry;
import fettle.catalog.SlotId;
import fettle.relation.Relations;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * A build laid out as placed parts and the slots they sit in. Every slot of the platform and of each placed part is in it, used or not.
 */
public record Placement(String platform, List<Occurrence> parts, List<SlotUse> slots, List<Unresolved> unresolved) {

    /** Stands for the platform where the number of a placed part is expected. */
    public static final int PLATFORM = -1;

    public Placement {
        parts = List.copyOf(parts);
        slots = List.copyOf(slots);
        unresolved = List.copyOf(unresolved);
    }

    /** Lays out the entries of a build on a platform that exists; what can't be placed is listed as unresolved, with nothing below it. */
    public static Placement of(Relations relations, String platform, List<BuildEntry> entries) {
        return new Layout(relations, platform, entries).placement();
    }

    /** The slot in use that a placed part sits in. */
    public SlotUse slotOf(Occurrence part) {
        return slots.get(part.use());
    }

    /** The number of the placed part that bears the slot a placed part sits in, or {@link #PLATFORM}. */
    public int hostOf(Occurrence part) {
        return slotOf(part).owner();
    }

    private static final class Layout {
        private final Relations relations;
        private final String platform;
        private final Map<String, List<BuildEntry>> byPath = new TreeMap<>(Comparator.comparingInt(Layout::depth).thenComparing(Comparator.naturalOrder()));
        private final List<Occurrence> parts = new ArrayList<>();
        private final List<MutableUse> uses = new ArrayList<>();
        private final Map<String, MutableUse> usesByPath = new LinkedHashMap<>();
        private final List<Unresolved> unresolved = new ArrayList<>();
        private final List<String> lost = new ArrayList<>();

        private record MutableUse(int index, int owner, SlotId slot, String path, List<Integer> occupants) {}

        Layout(Relations relations, String platform, List<BuildEntry> entries) {
            this.relations = relations;
            this.platform = platform;
            entries.forEach(entry -> byPath.computeIfAbsent(entry.path(), unused -> new ArrayList<>()).add(entry));
        }

        private static int depth(String path) {
            return (int) path.chars().filter(c -> c == '/').count();
        }

        Placement placement() {
            open(PLATFORM, platform, "");
            byPath.forEach((path, entries) -> {
                entries.sort(Comparator.comparingInt(BuildEntry::position));
                place(path, entries);
            });
            List<SlotUse> slots = uses.stream().map(use -> new SlotUse(use.index, use.owner, use.slot, use.path, List.copyOf(use.occupants))).toList();
            return new Placement(platform, parts, slots, unresolved);
        }

        private void open(int owner, String host, String prefix) {
            for (SlotId slot : relations.slots(host)) {
                String path = prefix.isEmpty() ? slot.slot() : prefix + "/" + slot.slot();
                MutableUse use = new MutableUse(uses.size(), owner, slot, path, new ArrayList<>());
                uses.add(use);
                usesByPath.put(path, use);
            }
        }

        private void place(String path, List<BuildEntry> entries) {
            int cut = path.lastIndexOf('/');
            String slot = path.substring(cut + 1);
            int owner = PLATFORM;
            if (cut >= 0) {
                String through = path.substring(0, cut);
                if (lost.stream().anyMatch(gone -> (through + "/").startsWith(gone + "/"))) {
                    lost.add(path);
                    return;
                }
                int found = follow(through, entries);
                if (found == PLATFORM) {
                    lost.add(path);
                    return;
                }
                owner = found;
            }
            String host = owner == PLATFORM ? platform : parts.get(owner).part();
            String prefix = owner == PLATFORM ? "" : parts.get(owner).path() + "/";
            MutableUse use = usesByPath.get(prefix + slot);
            if (use == null) {
                List<String> known = relations.slots(host).stream().map(SlotId::slot).toList();
                entries.forEach(entry -> unresolved.add(new Unresolved.NoSuchSlot(entry, host, slot, known)));
                lost.add(path);
                return;
            }
            boolean several = relations.room(use.slot).most() > 1 || entries.size() > 1;
            for (BuildEntry entry : entries) {
                String here = several ? use.path + ":" + entry.position() : use.path;
                if (!relations.catalog().parts().containsKey(entry.part())) {
                    unresolved.add(new Unresolved.NoSuchPart(entry));
                    lost.add(here);
                    continue;
                }
                Occurrence part = new Occurrence(parts.size(), entry.part(), use.index, here, entry.at(), entry);
                parts.add(part);
                use.occupants.add(part.index());
                open(part.index(), part.part(), here);
            }
        }

        /** The placed part that a path leads to; {@link #PLATFORM} after noting why there is none. */
        private int follow(String through, List<BuildEntry> entries) {
            for (Occurrence part : parts) {
                if (part.path().equals(through) || part.path().equals(through + ":0") && uses.get(part.use()).occupants.size() == 1) {
                    return part.index();
                }
            }
            MutableUse use = usesByPath.get(through);
            if (use == null && through.endsWith(":0")) {
                use = usesByPath.get(through.substring(0, through.length() - 2));
                if (use != null && use.occupants.size() == 1 && parts.get(use.occupants.get(0)).path().equals(use.path)) {
                    return use.occupants.get(0);
                }
            }
            boolean crowded = use != null && use.occupants.size() > 1;
            int crowd = crowded ? use.occupants.size() : 0;
            entries.forEach(entry -> unresolved.add(
                    crowded ? new Unresolved.Ambiguous(entry, through, crowd) : new Unresolved.NothingThere(entry, through)));
            return PLATFORM;
        }
    }
}

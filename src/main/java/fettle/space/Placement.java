package fettle.space;

import fettle.catalog.BuildEntry;
import fettle.catalog.NameForm;
import fettle.catalog.SlotId;
import fettle.relation.Relations;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;

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

    /** The entries of the placed parts, of which paths tell positions where slots hold several, and nowhere else, however they are written. */
    public List<BuildEntry> entries() {
        return parts.stream().map(part -> {
            BuildEntry entry = part.entry();
            return new BuildEntry(slotOf(part).path(), entry.position(), entry.part(), entry.at(), entry.pathOrigin(), entry.origin());
        }).toList();
    }

    /** The ids of the placed parts, by path. */
    public SortedMap<String, String> partsByPath() {
        SortedMap<String, String> byPath = new TreeMap<>();
        parts.forEach(part -> byPath.put(part.path(), part.part()));
        return byPath;
    }

    /** Whether a violation is of a slot that seems empty only since what the build puts there is unknown, or may be put elsewhere, and so goes without saying. */
    public boolean onlyDoubtful(Violation violation) {
        return violation.parts().isEmpty() && !violation.slots().isEmpty() && violation.slots().stream().allMatch(slot -> slots.get(slot).doubtful());
    }

    /** The number of the placed part that bears the slot a placed part sits in, or {@link #PLATFORM}. */
    public int hostOf(Occurrence part) {
        return slotOf(part).owner();
    }

    /** Places the entries from the platform outward, so that a host always stands before what it carries. */
    private static final class Layout {
        private record Open(int index, int owner, SlotId slot, String path, SortedMap<Integer, Integer> occupants) {}

        private static final Pattern EMPTY_STEPS = Pattern.compile("^/+|/+$|/+(?=/)");

        private final Relations relations;
        private final String platform;
        private final SortedMap<String, List<BuildEntry>> byPath =
                new TreeMap<>(Comparator.comparingInt(Layout::depth).thenComparing(Layout::unpositioned).thenComparing(Comparator.naturalOrder()));
        private final List<Occurrence> parts = new ArrayList<>();
        private final List<Open> uses = new ArrayList<>();
        private final Map<Integer, Map<String, Open>> slotsOf = new HashMap<>();
        private final List<Unresolved> unresolved = new ArrayList<>();
        private final Set<String> lost = new HashSet<>();
        private final Set<Open> doubtful = Collections.newSetFromMap(new IdentityHashMap<>());
        private final Set<Open> perhapsMeant = Collections.newSetFromMap(new IdentityHashMap<>());

        Layout(Relations relations, String platform, List<BuildEntry> entries) {
            this.relations = relations;
            this.platform = platform;
            entries.forEach(entry -> byPath.computeIfAbsent(entry.path(), unused -> new ArrayList<>()).add(entry));
        }

        Placement placement() {
            open(PLATFORM, platform, "");
            byPath.values().forEach(this::place);
            // Only now it is known what is there and what is free.
            unresolved.replaceAll(each -> each instanceof Unresolved.NoSuchSlot lost ? withFree(lost) : each);
            List<SlotUse> slots = uses.stream()
                    .map(use -> new SlotUse(use.index, use.owner, use.slot, use.path, List.copyOf(use.occupants.values()), doubtful.contains(use) || perhapsMeant.contains(use)))
                    .toList();
            return new Placement(platform, parts, slots, unresolved);
        }

        private static int depth(String path) {
            int depth = 0;
            for (int cut = path.indexOf('/'); cut >= 0; cut = path.indexOf('/', cut + 1)) {
                depth++;
            }
            return depth;
        }

        /** A path without the positions that may as well be left out, so that a build is laid out in one order whether it tells them or not. */
        private static String unpositioned(String path) {
            return path.replace(":0/", "/");
        }

        private void open(int owner, String host, String prefix) {
            Map<String, Open> opened = new HashMap<>();
            slotsOf.put(owner, opened);
            for (SlotId slot : relations.slots(host)) {
                Open use = new Open(uses.size(), owner, slot, prefix + slot.slot(), new TreeMap<>());
                uses.add(use);
                opened.put(slot.slot(), use);
            }
        }

        private void place(List<BuildEntry> entries) {
            String path = entries.get(0).path();
            int cut = path.lastIndexOf('/');
            OptionalInt owner = cut < 0 ? OptionalInt.of(PLATFORM) : follow(path.substring(0, cut), entries);
            if (owner.isEmpty()) {
                lost.add(path);
                return;
            }
            String slot = path.substring(cut + 1);
            Open use = slotsOf.get(owner.getAsInt()).get(slot);
            if (use == null) {
                noSuchSlot(entries, owner.getAsInt(), path);
                lost.add(path);
                return;
            }
            boolean several = relations.room(use.slot).most() > 1 || entries.size() > 1;
            for (BuildEntry entry : entries) {
                String here = several ? use.path + ":" + entry.position() : use.path;
                if (relations.catalog().parts().containsKey(entry.part())) {
                    Occurrence part = new Occurrence(parts.size(), entry.part(), use.index, here, entry.at(), entry);
                    parts.add(part);
                    use.occupants.put(use.occupants.containsKey(entry.position()) ? use.occupants.lastKey() + 1 : entry.position(), part.index());
                    open(part.index(), part.part(), here + "/");
                } else {
                    unresolved.add(new Unresolved.NoSuchPart(entry));
                    doubtful.add(use);
                    lost.add(entries.size() == 1 ? path : path + ":" + entry.position());
                }
            }
        }

        private void noSuchSlot(List<BuildEntry> entries, int owner, String through) {
            String host = owner == PLATFORM ? platform : parts.get(owner).part();
            List<String> known = relations.slots(host).stream().map(SlotId::slot).filter(NameForm::id).toList();
            entries.forEach(entry -> unresolved.add(new Unresolved.NoSuchSlot(entry, host, through, known, List.of())));
        }

        /** A part that belongs further out is often written where its slot isn't; what is on it then would have to follow, and is left to be asked about next. */
        private Unresolved withFree(Unresolved.NoSuchSlot lost) {
            BuildEntry entry = lost.entry();
            String steps = EMPTY_STEPS.matcher(entry.path()).replaceAll("");
            if (!steps.equals(entry.path()) && uses.stream().anyMatch(use -> use.path.equals(steps) && use.occupants.isEmpty() && goes(entry, use.slot))) {
                return new Unresolved.NoSuchSlot(entry, lost.host(), lost.through(), lost.known(), List.of(steps));
            }
            if (!entry.path().substring(entry.path().lastIndexOf('/') + 1).equals(lost.slot())) {
                return lost;
            }
            List<Open> free = uses.stream().filter(use -> NameForm.id(use.slot.slot()) && use.occupants.isEmpty() && !doubtful.contains(use) && goes(entry, use.slot)).toList();
            List<Open> alike = free.stream().filter(use -> use.slot.slot().equals(lost.slot())).toList();
            return new Unresolved.NoSuchSlot(entry, lost.host(), lost.through(), lost.known(), (alike.isEmpty() ? free : alike).stream().map(Open::path).toList());
        }

        /** Whether a part goes into a slot that nothing is in, where its notches are free to choose. */
        private boolean goes(BuildEntry entry, SlotId slot) {
            return relations.fits(slot, entry.part()) && entry.at().isEmpty() && relations.span(entry.part()) <= relations.room(slot).notches().orElse(Integer.MAX_VALUE);
        }

        /** The placed part that a path leads to; empty after noting why there is none, once for each cause. */
        private OptionalInt follow(String through, List<BuildEntry> entries) {
            int owner = PLATFORM;
            String walked = "";
            String[] steps = entries.get(0).path().split("/", -1);
            int step = 0;
            for (String segment : through.split("/", -1)) {
                step++;
                walked = walked.isEmpty() ? segment : walked + "/" + segment;
                if (lost.contains(walked)) {
                    return OptionalInt.empty();
                }
                int colon = segment.lastIndexOf(':');
                String slot = colon < 0 ? segment : segment.substring(0, colon);
                Open use = slotsOf.get(owner).get(slot);
                if (use == null) {
                    noSuchSlot(entries, owner, walked.substring(0, walked.length() - segment.length()) + slot);
                    return OptionalInt.empty();
                }
                String here = walked;
                if (colon < 0 && use.occupants.size() > 1) {
                    entries.forEach(entry -> unresolved.add(new Unresolved.Ambiguous(entry, here, use.occupants.size())));
                    perhapsMeant(use, steps[step]);
                    return OptionalInt.empty();
                }
                Integer found = colon < 0
                        ? use.occupants.isEmpty() ? null : use.occupants.get(use.occupants.firstKey())
                        : use.occupants.get(position(segment.substring(colon + 1)));
                if (found == null) {
                    List<String> held = use.occupants.keySet().stream().map(position -> use.path + ":" + position).toList();
                    entries.forEach(entry -> unresolved.add(new Unresolved.NothingThere(entry, here, held)));
                    perhapsMeant(use, steps[step]);
                    return OptionalInt.empty();
                }
                owner = found;
            }
            return OptionalInt.of(owner);
        }

        /** Where a path goes on through the wrong position, any part in that slot may be the one whose slot was meant. */
        private void perhapsMeant(Open use, String written) {
            String slot = written.contains(":") ? written.substring(0, written.lastIndexOf(':')) : written;
            use.occupants.values().stream().map(slotsOf::get).filter(opened -> opened.containsKey(slot)).forEach(opened -> perhapsMeant.add(opened.get(slot)));
        }

        /** The number written after a colon; -1, which no part has, for what is no number. */
        private static int position(String written) {
            try {
                return Integer.parseInt(written);
            } catch (NumberFormatException notANumber) {
                return -1;
            }
        }
    }
}

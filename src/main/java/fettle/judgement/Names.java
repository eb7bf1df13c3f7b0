package fettle.judgement;

import fettle.catalog.Catalog;
import fettle.catalog.Entry;
import fettle.catalog.NameForm;
import fettle.catalog.Part;
import fettle.catalog.Reference;
import fettle.catalog.SlotHasTag;
import fettle.document.Nearest;
import fettle.engine.RuleIndex;
import fettle.engine.RuleInfo;
import fettle.space.EntryName;
import fettle.space.patch.EntryRename;
import fettle.space.patch.Rename;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/** What each sort of mention may name: entries by section, tags that parts bear, tags that slots bear, rules. */
final class Names {

    /** What selectors name. */
    private static final List<String> SELECTABLE = List.of("kinds", "parts", "tags");

    private final Map<String, Set<String>> bySpace = new TreeMap<>();
    private final Map<String, Map<String, Entry>> entries = new TreeMap<>();
    private final Map<String, Map<String, String>> renamed = new TreeMap<>();

    /** Of a catalog that is looked at by itself. */
    Names(Catalog catalog, RuleIndex rules) {
        this(catalog, rules, List.of(), List.of());
    }

    /**
     * @param renames the parts and platforms that were probably renamed in this catalog by a patch
     * @param others what else was
     */
    Names(Catalog catalog, RuleIndex rules, Collection<Rename> renames, Collection<EntryRename> others) {
        renames.forEach(rename -> rename(rename.from(), rename.to()));
        others.forEach(rename -> rename(rename.from(), rename.to()));
        catalog.entries().forEach(entry -> {
            add(entry.section(), entry.id());
            entries.computeIfAbsent(entry.section(), unused -> new TreeMap<>()).put(entry.id(), entry);
        });
        for (Map<String, Part> hosts : List.of(catalog.platforms(), catalog.parts())) {
            for (Part host : hosts.values()) {
                host.names().stream().flatMap(name -> name.tag().stream()).forEach(tag -> add("tags", tag));
                host.slots().forEach(slot -> slot.tags().stream().map(SlotHasTag::tag).forEach(tag -> add("slot tags", tag)));
            }
        }
        rules.rules().stream().map(RuleInfo::name).forEach(name -> add("rules", name));
    }

    private void rename(EntryName from, EntryName to) {
        renamed.computeIfAbsent(from.section(), unused -> new TreeMap<>()).put(from.id(), to.id());
    }

    private void add(String space, String id) {
        bySpace.computeIfAbsent(space, unused -> new TreeSet<>()).add(id);
    }

    private Set<String> names(String space) {
        return bySpace.getOrDefault(space, Set.of());
    }

    /** Whether a mention names something. */
    boolean known(Reference mention) {
        return names(mention.space()).contains(mention.id());
    }

    /** The facts that tell which of these mentions name something, and what else they could have named. */
    List<Object> facts(Collection<Reference> mentions) {
        SortedMap<String, SortedMap<String, Integer>> mentioned = new TreeMap<>();
        mentions.forEach(mention -> mentioned.computeIfAbsent(mention.space(), unused -> new TreeMap<>()).merge(mention.id(), 1, Integer::sum));
        List<Object> facts = new ArrayList<>();
        mentioned.forEach((space, ids) -> {
            boolean parts = space.equals("parts");
            Set<String> others = parts ? names("platforms") : space.equals("platforms") ? names("parts") : Set.of();
            facts.add(new KnownNames(space, Collections.unmodifiableSet(names(space)), Collections.unmodifiableSet(others), parts ? "a platform" : "a part", misnamed(space, ids),
                    Collections.unmodifiableMap(renamed.getOrDefault(space, Map.of())), selectable(space)));
            ids.keySet().stream().filter(names(space)::contains).forEach(id -> facts.add(new Known(space, id)));
        });
        return List.copyOf(facts);
    }

    /** What selectors can name besides what is in one space. */
    private SortedMap<String, Set<String>> selectable(String space) {
        SortedMap<String, Set<String>> selectable = new TreeMap<>();
        SELECTABLE.stream().filter(other -> !other.equals(space)).forEach(other -> selectable.put(other, Collections.unmodifiableSet(names(other))));
        return Collections.unmodifiableSortedMap(selectable);
    }

    /** By ids that are mentioned and are not there, the entries of nearly that name that nothing mentions, and that probably have the wrong one. */
    private Map<String, Misnamed> misnamed(String space, SortedMap<String, Integer> mentions) {
        Map<String, Entry> there = entries.getOrDefault(space, Map.of());
        SortedMap<String, Misnamed> misnamed = new TreeMap<>();
        mentions.forEach((id, count) -> {
            if (!names(space).contains(id) && NameForm.fits(space, id)) {
                Nearest.names(id, there.keySet()).stream().limit(1).filter(near -> !mentions.containsKey(near))
                        .map(near -> new Misnamed(there.get(near), count)).filter(entry -> count > 1 || !entry.fit())
                        .forEach(entry -> misnamed.put(id, entry));
            }
        });
        return Collections.unmodifiableMap(misnamed);
    }
}

package fettle.space.patch;

import fettle.catalog.Catalog;
import fettle.catalog.CatalogReader;
import fettle.document.Document;
import fettle.document.Node;
import fettle.document.Origin;
import fettle.space.Change;
import fettle.space.EntryName;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * Catalogs between two others: some entries of one, with some of the differences to the other undone. Asking what a build comes to in such a
 * catalog is how a difference is shown to be to blame.
 */
final class Mixture {

    private static final Origin NOWHERE = Origin.startOf("");

    private final WrittenCatalog base;
    private final WrittenCatalog other;

    private Mixture(WrittenCatalog base, WrittenCatalog other) {
        this.base = base;
        this.other = other;
    }

    /** Undoes differences in the new catalog. */
    static Mixture undoing(CatalogChanges changes) {
        return new Mixture(changes.now(), changes.old());
    }

    /** Makes differences in the old catalog. */
    static Mixture making(CatalogChanges changes) {
        return new Mixture(changes.old(), changes.now());
    }

    /** The catalog of these entries alone, with these differences undone (or made). */
    Catalog catalog(Collection<EntryName> entries, Set<Change> taken) {
        Map<EntryName, List<Change>> byEntry = new TreeMap<>();
        taken.forEach(change -> byEntry.computeIfAbsent(change.entry(), unused -> new ArrayList<>()).add(change));
        Map<String, List<Node>> sections = new TreeMap<>();
        for (EntryName name : entries) {
            entry(name, byEntry.getOrDefault(name, List.of())).ifPresent(entry -> file(name, entry, sections));
        }
        Map<String, Node.Member> members = new LinkedHashMap<>();
        sections.forEach((section, items) -> {
            Node value = section.equals("catalog") ? items.get(0) : new Node.Arr(items, NOWHERE);
            members.put(section, new Node.Member(NOWHERE, value));
        });
        return CatalogReader.read(List.of(new Document("", Optional.of(new Node.Obj(members, NOWHERE)), List.of())));
    }

    /** One entry with some of its differences undone (or made); empty where that leaves none. */
    Optional<Node.Obj> entry(EntryName name, Collection<Change> taken) {
        Optional<Node.Obj> here = base.entry(name);
        Optional<Node.Obj> there = other.entry(name);
        if (here.isEmpty() || there.isEmpty()) {
            return taken.isEmpty() ? here : there;
        }
        Node.Obj mixed = here.get();
        for (Change change : taken) {
            mixed = NodeEdit.copied(mixed, there.get(), change.path());
        }
        return Optional.of(mixed);
    }

    /** Puts an entry into its section, and a part's offers into theirs. */
    private static void file(EntryName name, Node.Obj entry, Map<String, List<Node>> sections) {
        Node.Obj filed = entry;
        if (name.host() && entry.members().containsKey(WrittenCatalog.OFFERS)) {
            Map<String, Node.Member> members = new LinkedHashMap<>(entry.members());
            Node.Member offers = members.remove(WrittenCatalog.OFFERS);
            filed = new Node.Obj(members, entry.origin());
            if (offers.value() instanceof Node.Obj named) {
                named.members().values().forEach(offer -> sections.computeIfAbsent(WrittenCatalog.OFFERS, unused -> new ArrayList<>()).add(offer.value()));
            }
        } else if (name.section().equals("catalog")) {
            Map<String, Node.Member> members = new LinkedHashMap<>(entry.members());
            members.put("id", new Node.Member(NOWHERE, new Node.Text(name.id(), NOWHERE)));
            filed = new Node.Obj(members, entry.origin());
        }
        sections.computeIfAbsent(name.section(), unused -> new ArrayList<>()).add(filed);
    }
}

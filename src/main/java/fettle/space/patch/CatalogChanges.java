package fettle.space.patch;

import fettle.catalog.Reference;
import fettle.document.DocumentSet;
import fettle.document.Node;
import fettle.document.Origin;
import fettle.space.Change;
import fettle.space.EntryName;
import fettle.space.Value;
import fettle.space.patch.Statements.Statement;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/** All differences between two catalogs, entry by entry and property by property, and which entries were probably renamed. */
public final class CatalogChanges {

    private final WrittenCatalog old;
    private final WrittenCatalog now;
    private final List<Change> changes;
    private final Map<EntryName, List<Change>> byEntry = new HashMap<>();
    private final List<Rename> renames;
    private final List<SlotRename> slotRenames;
    private final List<EntryRename> entryRenames;

    private CatalogChanges(
            WrittenCatalog old, WrittenCatalog now, List<Change> changes, List<Rename> renames, List<SlotRename> slotRenames, List<EntryRename> entryRenames) {
        this.old = old;
        this.now = now;
        this.changes = List.copyOf(changes);
        this.renames = renames;
        this.slotRenames = slotRenames;
        this.entryRenames = entryRenames;
        this.changes.forEach(change -> byEntry.computeIfAbsent(change.entry(), unused -> new ArrayList<>()).add(change));
    }

    /** Compares the documents of an old catalog with those of a new one. */
    public static CatalogChanges between(DocumentSet old, DocumentSet now) {
        WrittenCatalog before = WrittenCatalog.of(old);
        WrittenCatalog after = WrittenCatalog.of(now).alignedWith(before);
        List<Change> changes = between(before, after);
        List<Rename> renames = Renames.guessed(before, after);
        return new CatalogChanges(before, after, changes, renames, SlotRenames.guessed(before, after, changes, renames), EntryRenames.guessed(before, after, changes));
    }

    private static List<Change> between(WrittenCatalog before, WrittenCatalog after) {
        SortedSet<EntryName> names = new TreeSet<>(before.entries().keySet());
        names.addAll(after.entries().keySet());
        List<Change> changes = new ArrayList<>();
        for (EntryName name : names) {
            changes.addAll(between(name, before.entry(name), after.entry(name)));
        }
        return changes;
    }

    /**
     * The differences that are left had all renamed entries gone by their new ids in the old catalog already. What went by the old ids is gone here as well.
     *
     * @param mentions of the old catalog
     */
    CatalogChanges followingRenames(Collection<Reference> mentions) {
        Map<EntryName, EntryName> others = new HashMap<>();
        renames.forEach(rename -> others.put(rename.from(), rename.to()));
        WrittenCatalog before = old.renamed(others, mentions);
        WrittenCatalog after = now.alignedWith(before);
        return new CatalogChanges(before, after, between(before, after), renames, slotRenames, entryRenames);
    }

    private static List<Change> between(EntryName name, Optional<Node.Obj> before, Optional<Node.Obj> after) {
        if (before.isPresent() && after.isPresent()) {
            return Statements.alike(before.get(), after.get()) ? List.of() : between(name, before.get(), after.get());
        }
        return List.of(new Change(name, List.of(), before.map(CatalogChanges::summed), after.map(CatalogChanges::summed),
                before.map(Node.Obj::origin), after.map(Node.Obj::origin)));
    }

    private static Value summed(Node.Obj entry) {
        return Value.list(Statements.of(entry).values().stream()
                .filter(statement -> !statement.heading())
                .map(statement -> String.join(".", statement.path()) + " " + statement.value().text())
                .toList());
    }

    /** The properties in which two entries differ; of a slot or an offer that only one has, the slot or offer as a whole. */
    static List<Change> between(EntryName name, Node.Obj before, Node.Obj after) {
        SortedMap<List<String>, Statement> said = Statements.of(before);
        SortedMap<List<String>, Statement> says = Statements.of(after);
        Statements.sumUp(said, says);
        Statements.sumUp(says, said);
        SortedMap<List<String>, Statement> all = new TreeMap<>(said.comparator());
        all.putAll(said);
        all.putAll(says);
        List<Change> changes = new ArrayList<>();
        List<String> under = List.of();
        for (List<String> path : all.keySet()) {
            Optional<Statement> one = Optional.ofNullable(said.get(path));
            Optional<Statement> other = Optional.ofNullable(says.get(path));
            boolean told = !under.isEmpty() && path.size() > under.size() && path.subList(0, under.size()).equals(under);
            if (told || one.map(Statement::value).equals(other.map(Statement::value))) {
                continue;
            }
            if (all.get(path).heading()) {
                if (one.isPresent() && other.isPresent()) {
                    continue;
                }
                under = path;
            }
            changes.add(new Change(name, path, one.map(Statement::value), other.map(Statement::value), origin(one), origin(other)));
        }
        return changes;
    }

    private static Optional<Origin> origin(Optional<Statement> statement) {
        return statement.map(Statement::origin);
    }

    /** All differences, by entry and property. */
    public List<Change> all() {
        return changes;
    }

    /** The differences in one entry; none where it is the same on both sides. */
    public List<Change> of(EntryName entry) {
        return Collections.unmodifiableList(byEntry.getOrDefault(entry, List.of()));
    }

    /** The difference that is the whole of an entry: that only one side has it. */
    public Optional<Change> whole(EntryName entry) {
        return of(entry).stream().filter(Change::whole).findFirst();
    }

    /** Parts and platforms that were probably renamed; each is also among the differences as one removed and one added. */
    public List<Rename> renames() {
        return renames;
    }

    /** Slots that were probably renamed; each is also among the differences, or those of its renamed host, as one gone and one new. */
    public List<SlotRename> slotRenames() {
        return slotRenames;
    }

    /** Lenses, outfits, access profiles and vendors that were probably renamed; each is also among the differences as one removed and one added. */
    public List<EntryRename> entryRenames() {
        return entryRenames;
    }

    /** Whether there is no difference. */
    public boolean none() {
        return changes.isEmpty();
    }

    WrittenCatalog old() {
        return old;
    }

    WrittenCatalog now() {
        return now;
    }
}

package fettle.space.patch;

import fettle.document.Nearest;
import fettle.document.Node;
import fettle.space.Change;
import fettle.space.EntryName;
import fettle.space.Value;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Guesses which lenses, outfits, access profiles and vendors were renamed: one is gone and one has come of which the very same is said, labels aside, and
 * no second one is as good on either side. What is sold at a vendor is said of it. Where hardly anything is said, label or id must be alike too.
 */
final class EntryRenames {

    private static final String VENDORS = "vendors";
    private static final String VENDOR = "vendor";
    private static final String LABEL = "label";

    /** Vendors come before the access profiles that name them. */
    private static final List<String> SECTIONS = List.of(VENDORS, "access", "outfits", "lenses");

    /** What says more than how many tiers there are. */
    private static final Map<String, Integer> LEAST = Map.of(VENDORS, 2);

    private final WrittenCatalog old;
    private final WrittenCatalog now;
    private final Map<String, String> vendors = new HashMap<>();

    private EntryRenames(WrittenCatalog old, WrittenCatalog now) {
        this.old = old;
        this.now = now;
    }

    /** @param changes the differences between the catalogs */
    static List<EntryRename> guessed(WrittenCatalog old, WrittenCatalog now, List<Change> changes) {
        EntryRenames renames = new EntryRenames(old, now);
        List<EntryRename> guesses = new ArrayList<>();
        for (String section : SECTIONS) {
            List<EntryName> gone = whole(section, changes.stream().filter(Change::removed).toList());
            List<EntryName> come = whole(section, changes.stream().filter(Change::added).toList());
            guesses.addAll(renames.of(section, gone, come));
        }
        return guesses.stream().sorted(Comparator.comparing(EntryRename::from)).toList();
    }

    private static List<EntryName> whole(String section, List<Change> changes) {
        return changes.stream().filter(Change::whole).map(Change::entry).filter(entry -> entry.section().equals(section)).toList();
    }

    private List<EntryRename> of(String section, List<EntryName> gone, List<EntryName> come) {
        List<EntryRename> pairs = new ArrayList<>();
        gone.forEach(from -> come.forEach(to -> pair(from, to).ifPresent(pairs::add)));
        List<EntryRename> alone = pairs.stream().filter(pair -> pairs.stream().noneMatch(other -> other != pair && shares(pair, other) && !betters(pair, other))).toList();
        if (section.equals(VENDORS)) {
            alone.forEach(pair -> vendors.put(pair.from().id(), pair.to().id()));
        }
        return alone;
    }

    private Optional<EntryRename> pair(EntryName from, EntryName to) {
        Node.Obj before = old.entry(from).orElseThrow();
        Node.Obj after = now.entry(to).orElseThrow();
        Map<String, String> said = said(before, vendors);
        Map<String, String> says = said(after, Map.of());
        if (from.section().equals(VENDORS)) {
            offers(old, from.id(), said);
            offers(now, to.id(), says);
            // Offers may have been left with the old id.
            offers(now, from.id(), says);
        }
        Optional<String> label = WrittenCatalog.text(before, LABEL);
        boolean labelled = label.isPresent() && label.equals(WrittenCatalog.text(after, LABEL));
        boolean enough = said.size() >= LEAST.getOrDefault(from.section(), 1) || labelled || near(from, to);
        return said.equals(says) && enough ? Optional.of(new EntryRename(from, to, labelled)) : Optional.empty();
    }

    /** What an entry says, with ids of vendors as they are now. */
    private static Map<String, String> said(Node.Obj entry, Map<String, String> vendors) {
        Map<String, String> said = new TreeMap<>();
        Statements.of(entry).forEach((path, statement) -> {
            if (!statement.heading() && !path.get(0).equals(LABEL)) {
                List<String> steps = new ArrayList<>(path);
                if (path.size() == 2 && path.get(0).equals(VENDORS)) {
                    steps.set(1, vendors.getOrDefault(path.get(1), path.get(1)));
                }
                said.put(String.join(".", steps), statement.value().text());
            }
        });
        return said;
    }

    /** What a vendor sells, and for what. */
    private static void offers(WrittenCatalog catalog, String vendor, Map<String, String> said) {
        catalog.entries().forEach((name, entry) -> {
            Node.Member offers = entry.members().get(WrittenCatalog.OFFERS);
            if (name.host() && offers != null && offers.value() instanceof Node.Obj named) {
                named.members().values().stream().map(member -> (Node.Obj) member.value())
                        .filter(offer -> WrittenCatalog.text(offer, VENDOR).filter(vendor::equals).isPresent())
                        .map(offer -> Statements.of(offer).values().stream().filter(statement -> !statement.heading())
                                .map(statement -> String.join(".", statement.path()) + " " + statement.value().text()).toList())
                        .forEach(terms -> said.put("sells " + name.id() + " " + Value.list(terms).text(), ""));
            }
        });
    }

    private static boolean near(EntryName from, EntryName to) {
        return !Nearest.names(from.id(), List.of(to.id())).isEmpty();
    }

    private static boolean shares(EntryRename one, EntryRename other) {
        return one.from().equals(other.from()) || one.to().equals(other.to());
    }

    /** Whether label and id speak more for one guess than for another. */
    private static boolean betters(EntryRename one, EntryRename other) {
        return one.labelled() != other.labelled() ? one.labelled() : near(one.from(), one.to()) && !near(other.from(), other.to());
    }
}

package fettle.space.patch;

import fettle.catalog.Reference;
import fettle.catalog.Sections;
import fettle.document.DocumentSet;
import fettle.document.Node;
import fettle.document.Origin;
import fettle.space.EntryName;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * The entries of a catalog as objects, one for each name: of entries that share an id the one that stands first, as elsewhere. Each part has its
 * offers under a property {@code offers}, by vendor and tier.
 */
final class WrittenCatalog {

    static final String OFFERS = "offers";
    private static final EntryName HEAD = new EntryName("catalog", "catalog");
    private static final String CURRENCY = "currency";
    /** What says nothing of the game, or has no id. */
    private static final Set<String> NO_ENTRIES = Set.of("catalog", "waivers", OFFERS);

    private final SortedMap<EntryName, Node.Obj> entries;

    private WrittenCatalog(SortedMap<EntryName, Node.Obj> entries) {
        this.entries = Collections.unmodifiableSortedMap(entries);
    }

    /** Merges the documents of a catalog. */
    static WrittenCatalog of(DocumentSet documents) {
        Map<String, List<Node.Obj>> sections = new HashMap<>();
        documents.documents().forEach(document -> document.root().ifPresent(root -> gather(root, sections)));
        sections.values().forEach(list -> list.sort(Comparator.comparing(Node.Obj::origin)));
        SortedMap<EntryName, Node.Obj> entries = new TreeMap<>();
        sections.forEach((section, objects) -> {
            if (!NO_ENTRIES.contains(section)) {
                objects.forEach(object -> text(object, "id").ifPresent(id -> entries.putIfAbsent(new EntryName(section, id), object)));
            }
        });
        oneOfEachHost(entries);
        Optional<Node.Obj> head = sections.getOrDefault("catalog", List.of()).stream().findFirst();
        head.filter(object -> object.members().containsKey(CURRENCY))
                .ifPresent(object -> entries.put(HEAD, new Node.Obj(Map.of(CURRENCY, object.members().get(CURRENCY)), object.origin())));
        String base = head.flatMap(object -> text(object, CURRENCY)).orElse("");
        Map<String, List<Node.Obj>> offers = new HashMap<>();
        sections.getOrDefault(OFFERS, List.of()).stream().filter(offer -> text(offer, "vendor").isPresent()).forEach(offer ->
                text(offer, "part").ifPresent(part -> offers.computeIfAbsent(part, unused -> new ArrayList<>()).add(offer)));
        entries.replaceAll((name, object) ->
                name.host() && offers.containsKey(name.id()) ? withOffers(object, OfferNames.named(offers.get(name.id()), base)) : object);
        return new WrittenCatalog(entries);
    }

    private static void gather(Node root, Map<String, List<Node.Obj>> sections) {
        if (root instanceof Node.Obj object) {
            object.members().forEach((section, member) -> {
                if (!Sections.known(section) && !section.equals("catalog")) {
                    return;
                }
                List<Node> items = member.value() instanceof Node.Arr list ? list.items() : List.of(member.value());
                items.stream().filter(Node.Obj.class::isInstance).map(Node.Obj.class::cast)
                        .forEach(item -> sections.computeIfAbsent(section, unused -> new ArrayList<>()).add(item));
            });
        }
    }

    /** Parts and platforms share one space of ids: of one id the entry that stands first is kept. */
    private static void oneOfEachHost(SortedMap<EntryName, Node.Obj> entries) {
        for (EntryName platform : List.copyOf(entries.keySet())) {
            EntryName part = EntryName.part(platform.id());
            if (platform.section().equals("platforms") && entries.containsKey(part)) {
                boolean platformFirst = entries.get(platform).origin().compareTo(entries.get(part).origin()) < 0;
                entries.remove(platformFirst ? part : platform);
            }
        }
    }

    private static Node.Obj withOffers(Node.Obj entry, SortedMap<String, Node.Obj> offers) {
        Map<String, Node.Member> members = new LinkedHashMap<>(entry.members());
        Origin origin = offers.get(offers.firstKey()).origin();
        Map<String, Node.Member> named = new LinkedHashMap<>();
        offers.forEach((name, offer) -> named.put(name, new Node.Member(offer.origin(), offer)));
        members.put(OFFERS, new Node.Member(origin, new Node.Obj(named, origin)));
        return new Node.Obj(members, entry.origin());
    }

    /** The text of a property, where it is one. */
    static Optional<String> text(Node.Obj object, String property) {
        return Optional.ofNullable(object.members().get(property))
                .map(Node.Member::value)
                .flatMap(node -> node instanceof Node.Text text ? Optional.of(text.value()) : Optional.empty());
    }

    /** All entries by name. */
    SortedMap<EntryName, Node.Obj> entries() {
        return entries;
    }

    /** The entry of that name. */
    Optional<Node.Obj> entry(EntryName name) {
        return Optional.ofNullable(entries.get(name));
    }

    /**
     * The same catalog, had entries gone by other ids in it: by these too where they are defined, and by these alone where others mention them.
     *
     * @param others the new name of each
     * @param mentions where they are mentioned
     */
    WrittenCatalog renamed(Map<EntryName, EntryName> others, Collection<Reference> mentions) {
        Map<String, String> ids = new HashMap<>();
        others.forEach((from, to) -> ids.put(from.id(), to.id()));
        Map<Origin, String> written = new HashMap<>();
        mentions.stream().filter(mention -> mention.space().equals("parts") && ids.containsKey(mention.id()))
                .forEach(mention -> written.put(mention.origin(), ids.get(mention.id())));
        SortedMap<EntryName, Node.Obj> renamed = new TreeMap<>(entries);
        renamed.replaceAll((name, object) -> (Node.Obj) NodeEdit.rewritten(object, written));
        others.forEach((from, to) -> entry(from).ifPresent(object -> {
            Map<Origin, String> own = new HashMap<>(written);
            own.put(object.members().get("id").value().origin(), to.id());
            renamed.put(to, (Node.Obj) NodeEdit.rewritten(object, own));
        }));
        return new WrittenCatalog(renamed);
    }

    /** The same catalog with the offers of each part named as in an older one, so that an offer that moved to another tier keeps its name. */
    WrittenCatalog alignedWith(WrittenCatalog older) {
        SortedMap<EntryName, Node.Obj> aligned = new TreeMap<>(entries);
        aligned.replaceAll((name, object) -> older.entry(name).map(old -> aligned(old, object)).orElse(object));
        return new WrittenCatalog(aligned);
    }

    /** One entry with its offers named as those of an older one. */
    static Node.Obj aligned(Node.Obj old, Node.Obj now) {
        SortedMap<String, Node.Obj> before = offers(old);
        SortedMap<String, Node.Obj> after = offers(now);
        return before.isEmpty() || after.isEmpty() ? now : withOffers(now, OfferNames.aligned(before, after));
    }

    private static SortedMap<String, Node.Obj> offers(Node.Obj entry) {
        SortedMap<String, Node.Obj> offers = new TreeMap<>();
        Node.Member member = entry.members().get(OFFERS);
        if (member != null && member.value() instanceof Node.Obj named) {
            named.members().forEach((name, offer) -> offers.put(name, (Node.Obj) offer.value()));
        }
        return offers;
    }
}

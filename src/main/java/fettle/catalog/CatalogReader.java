package fettle.catalog;

import fettle.catalog.Fields.Pair;
import fettle.catalog.Fields.Word;
import fettle.document.Document;
import fettle.document.Node;
import fettle.document.Origin;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Merges catalog documents into one {@link Catalog}, noting each entry and each mention of another entry on the way. */
public final class CatalogReader {

    private final List<CatalogHead> heads = new ArrayList<>();
    private final Map<String, List<Node>> sections = new TreeMap<>();
    private final List<Entry> entries = new ArrayList<>();
    private final List<Reference> references = new ArrayList<>();
    private final Set<String> hosts = new HashSet<>();
    private String currency = "";

    private CatalogReader() {}

    /** Reads what can be read; whatever a document has wrong is reported by the schema check and by rules on entries and references. */
    public static Catalog read(List<Document> documents) {
        return new CatalogReader().merge(documents);
    }

    private Catalog merge(List<Document> documents) {
        for (Document document : documents) {
            document.root().flatMap(Fields::of).ifPresent(this::gather);
        }
        heads.sort(Comparator.comparing(CatalogHead::origin));
        currency = heads.isEmpty() ? "" : heads.get(0).currency();

        var attributes = section("attributes", this::attribute);
        var mounts = section("mounts", (id, fields) -> Optional.of(label(id, fields)));
        var kinds = section("kinds", (id, fields) -> Optional.of(new Catalog.Kind(id, label(id, fields), fields.flag("role", false))));
        var zones = section("zones", (id, fields) -> Optional.of(label(id, fields)));
        var traits = section("traits", (id, fields) -> Optional.of(label(id, fields)));
        var platforms = section("platforms", (id, fields) -> part(id, fields, true));
        var parts = section("parts", (id, fields) -> part(id, fields, false));
        platforms.keySet().forEach(id -> {
            if (parts.containsKey(id) && parts.get(id).origin().compareTo(platforms.get(id).origin()) > 0) {
                parts.remove(id);
            }
        });
        platforms.keySet().removeAll(parts.keySet());
        var constraints = section("constraints", this::constraint);
        var currencies = section("currencies", (id, fields) -> fields.decimal("rate").filter(rate -> rate.signum() > 0).map(rate -> new Currency(id, rate, fields.origin())));
        var vendors = section("vendors", (id, fields) -> Optional.of(new Vendor(id, label(id, fields), fields.whole("tiers", 0, Vendor.MOST_TIERS).orElse(Vendor.UNREAD), fields.origin())));
        var goods = section("goods", (id, fields) -> fields.decimal("value").map(value -> new Good(id, label(id, fields), value, fields.origin())));
        var access = section("access", this::access);
        var outfits = section("outfits", this::outfit);
        var limits = section("limits", this::limit);
        var lenses = section("lenses", this::lens);
        List<Offer> offers = new ArrayList<>();
        fields("offers").forEach(fields -> offer(fields).ifPresent(offers::add));
        List<Waiver> waivers = new ArrayList<>();
        fields("waivers").forEach(fields -> waiver(fields).ifPresent(waivers::add));
        offers.sort(Comparator.comparing(Offer::part).thenComparing(Offer::vendor).thenComparingInt(Offer::tier).thenComparing(Offer::origin));
        waivers.sort(Comparator.comparing(Waiver::rule).thenComparing(Waiver::subject).thenComparing(Waiver::origin));
        entries.sort(Comparator.comparing(Entry::space).thenComparing(Entry::id).thenComparing(Entry::origin));
        references.sort(Comparator.comparing(Reference::origin).thenComparing(Reference::space).thenComparing(Reference::id));

        return new Catalog(
                heads.stream().findFirst(), List.copyOf(heads), attributes, mounts, kinds, zones, traits, platforms, parts, constraints, currencies, vendors,
                goods, List.copyOf(offers), access, outfits, limits, lenses, List.copyOf(waivers), List.copyOf(entries), List.copyOf(references));
    }

    private void gather(Fields document) {
        document.object().members().forEach((name, member) -> {
            if (name.equals("catalog")) {
                Fields.of(member.value()).ifPresent(this::gatherHead);
            } else {
                sections.computeIfAbsent(name, unused -> new ArrayList<>()).addAll(Fields.items(member.value()));
            }
        });
    }

    private void gatherHead(Fields fields) {
        fields.written("id").map(Word::text).ifPresent(id -> {
            CatalogHead head = new CatalogHead(
                    id, fields.text("patch").orElse(""), fields.text("released").orElse(""), fields.text("currency").orElse(""), fields.text("vocabulary"),
                    fields.origin());
            heads.add(head);
            fields.word("currency").ifPresent(word -> refer(head.subject(), "currencies", word.text(), word.origin()));
        });
    }

    private List<Fields> fields(String section) {
        return sections.getOrDefault(section, List.of()).stream()
                .flatMap(node -> Fields.of(node).stream())
                .sorted(Comparator.comparing(Fields::origin))
                .toList();
    }

    private <T> Map<String, T> section(String section, BiFunction<String, Fields, Optional<T>> reader) {
        Map<String, T> read = new TreeMap<>();
        String space = section.equals("platforms") ? "parts" : section;
        for (Fields fields : fields(section)) {
            Optional<Word> id = fields.word("id");
            if (id.isEmpty()) {
                continue;
            }
            entries.add(new Entry(section, space, id.get().text(), id.get().origin()));
            reader.apply(id.get().text(), fields).ifPresent(entry -> read.putIfAbsent(id.get().text(), entry));
        }
        return read;
    }

    private static String label(String id, Fields fields) {
        return fields.text("label").orElse(id);
    }

    private void refer(String subject, String space, String id, Origin origin) {
        references.add(new Reference(subject, space, id, false, origin));
    }

    private List<Selector> selectors(String subject, List<Word> words) {
        return words.stream().map(word -> selector(subject, word)).toList();
    }

    private Selector selector(String subject, Word word) {
        Selector selector = new Selector(word.text(), word.origin());
        if (selector.formed()) {
            references.add(new Reference(subject, selector.section(), selector.target(), true, word.origin()));
        }
        return selector;
    }

    private Optional<Attribute> attribute(String id, Fields fields) {
        int decimals = fields.whole("decimals", 0, Attribute.MOST_DECIMALS).orElse(Attribute.MOST_DECIMALS);
        return Optional.of(new Attribute(
                id,
                label(id, fields),
                fields.text("unit").orElse(""),
                named(Attribute.Better.values(), fields.text("better"), Attribute.Better.NONE),
                named(Attribute.Combine.values(), fields.text("combine"), Attribute.Combine.SUM),
                decimals,
                fields.whole("shown", 0, Attribute.MOST_DECIMALS).orElse(decimals),
                fields.decimal("material").orElse(BigDecimal.ZERO),
                fields.origin()));
    }

    private static <E extends Enum<E>> E named(E[] values, Optional<String> word, E otherwise) {
        for (E value : values) {
            if (word.isPresent() && value.name().toLowerCase(java.util.Locale.ROOT).equals(word.get())) {
                return value;
            }
        }
        return otherwise;
    }

    private Optional<Part> part(String id, Fields fields, boolean platform) {
        String subject = (platform ? "platform:" : "part:") + id;
        Origin origin = fields.origin();
        Optional<Word> kind = fields.word("kind");
        kind.ifPresent(word -> refer(subject, "kinds", word.text(), word.origin()));
        List<HasName> names = new ArrayList<>();
        if (!platform) {
            names.add(new HasName(id, id, fields.word("id").orElseThrow().origin()));
            kind.ifPresent(word -> names.add(new HasName(id, Selector.ofKind(word.text()), word.origin())));
            distinct(fields.words("tags")).forEach(tag -> names.add(new HasName(id, Selector.ofTag(tag.text()), tag.origin())));
        }
        List<Needs> needs = new ArrayList<>();
        for (Node group : fields.items("needs")) {
            // What is no list says nothing that could be asked for, and what can't be read may be what meets it; an empty one can't be met.
            if (group instanceof Node.Arr) {
                List<Selector> anyOf = selectors(subject, Fields.words(group));
                if (!Fields.lacking(group)) {
                    needs.add(new Needs(id, needs.size(), anyOf, group.origin()));
                }
            }
        }
        List<DeclaresTrait> traits = new ArrayList<>();
        for (Pair pair : fields.named("traits")) {
            refer(subject, "traits", pair.key(), pair.origin());
            Fields.texts(pair.value()).ifPresent(values -> traits.add(new DeclaresTrait(id, pair.key(), values, pair.origin())));
        }
        List<BuildEntry> factory = platform ? BuildReader.entries(fields.pairs("factory")) : List.of();
        factory.stream().filter(BuildEntry::named).forEach(entry -> refer(subject, "parts", entry.part(), entry.origin()));
        return Optional.of(new Part(
                id,
                label(id, fields),
                platform,
                kind.map(Word::text),
                platform ? List.of() : mentioned(subject, "mounts", fields.words("mounts")).stream().map(word -> new HasMount(id, word.text(), word.origin())).toList(),
                stats(id, subject, fields, "stats"),
                stats(id, subject, fields, "loaded"),
                slots(id, subject, fields),
                fields.whole("span", 1, Slot.LONGEST).orElse(1),
                List.copyOf(names),
                List.copyOf(traits),
                mentioned(subject, "zones", fields.words("claims")).stream().map(word -> new ClaimsZone(id, word.text(), word.origin())).toList(),
                mentioned(subject, "slot tags", fields.words("blocks")).stream().map(word -> new BlocksTag(id, word.text(), word.origin())).toList(),
                distinct(fields.words("excludes")).stream()
                        .map(word -> new Excludes(id, selector(subject, word).text(), word.origin())).toList(),
                List.copyOf(needs),
                factory,
                origin));
    }

    private List<Word> mentioned(String subject, String space, List<Word> words) {
        words.forEach(word -> refer(subject, space, word.text(), word.origin()));
        return distinct(words);
    }

    private static List<Word> distinct(List<Word> words) {
        Set<String> seen = new HashSet<>();
        return words.stream().filter(word -> seen.add(word.text())).toList();
    }

    private Map<String, Stat> stats(String part, String subject, Fields fields, String property) {
        Map<String, Stat> stats = new TreeMap<>();
        for (Pair pair : fields.named(property)) {
            referToAttribute(subject, pair);
            Fields.decimal(pair.value()).ifPresent(value ->
                    stats.put(pair.key(), new Stat(part, pair.key(), value, property.equals("loaded"), pair.value().origin())));
        }
        return stats;
    }

    /** A list or object that stands for a figure is mostly something else in the wrong place, which the schema tells, or a merge that isn't made. */
    private void referToAttribute(String subject, Pair pair) {
        if (!(pair.value() instanceof Node.Arr || pair.value() instanceof Node.Obj) || pair.key().equals("<<")) {
            refer(subject, "attributes", pair.key(), pair.origin());
        }
    }

    private List<Slot> slots(String host, String subject, Fields fields) {
        // The slots of a second host of the same id are no further slots of the first.
        boolean counted = hosts.add(host);
        Map<String, Slot> slots = new TreeMap<>();
        for (Node node : fields.items("slots")) {
            Optional<Fields> slot = Fields.of(node);
            Optional<Word> id = slot.flatMap(read -> read.word("id"));
            if (id.isPresent()) {
                if (counted) {
                    entries.add(Entry.ofSlot(host, id.get().text(), id.get().origin()));
                }
                slots.putIfAbsent(id.get().text(), slot(new SlotId(host, id.get().text()), subject, slot.get()));
            }
        }
        return List.copyOf(slots.values());
    }

    private Slot slot(SlotId id, String subject, Fields fields) {
        return new Slot(
                id,
                label(id.slot(), fields),
                mentioned(subject, "mounts", fields.words("mounts")).stream().map(word -> new SlotHasMount(id, word.text(), word.origin())).toList(),
                distinct(fields.words("accepts")).stream().map(word -> new SlotAccepts(id, selector(subject, word).text(), word.origin())).toList(),
                distinct(fields.words("rejects")).stream().map(word -> new SlotRejects(id, selector(subject, word).text(), word.origin())).toList(),
                fields.flag("required", false),
                distinct(fields.words("tags")).stream().map(word -> new SlotHasTag(id, word.text(), word.origin())).toList(),
                fields.whole("units", 1, Slot.LONGEST),
                fields.whole("most", 1, Slot.LONGEST),
                fields.flag("repeats", false),
                fields.origin());
    }

    private Optional<Constraint> constraint(String id, Fields fields) {
        String subject = "constraint:" + id;
        List<Selector> when = selectors(subject, fields.words("when"));
        List<Selector> need = selectors(subject, fields.words("need"));
        boolean lacking = Stream.of("when", "need").flatMap(side -> fields.value(side).stream()).anyMatch(Fields::lacking);
        // Without a condition it would hold of every build, which nobody means; and without all that it names, of more than it says.
        return when.isEmpty() || lacking ? Optional.empty() : Optional.of(new Constraint(
                id, when, need, fields.text("because").orElse(""), fields.origin()));
    }

    private Optional<Offer> offer(Fields fields) {
        Optional<Word> part = fields.word("part");
        Optional<Word> vendor = fields.word("vendor");
        if (part.isEmpty() || vendor.isEmpty()) {
            return Optional.empty();
        }
        String subject = "offer:" + part.get().text() + "@" + vendor.get().text();
        refer(subject, "parts", part.get().text(), part.get().origin());
        refer(subject, "vendors", vendor.get().text(), vendor.get().origin());
        fields.word("currency").ifPresent(word -> refer(subject, "currencies", word.text(), word.origin()));
        fields.items("barter").stream().flatMap(node -> Fields.of(node).stream()).flatMap(item -> item.word("good").stream())
                .forEach(word -> refer(subject, "goods", word.text(), word.origin()));
        List<Barter> barter = fields.bartered("barter");
        OptionalInt tier = fields.whole("tier");
        Optional<BigDecimal> price = fields.amount("price");
        if (price.isEmpty() && barter.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Offer(
                part.get().text(), vendor.get().text(), tier.orElse(0), tier.orElse(0) > 0, price, fields.text("currency").orElse(currency),
                barter, fields.text("seen"), fields.origin()));
    }

    private Optional<Access> access(String id, Fields fields) {
        Map<String, Integer> vendors = new TreeMap<>();
        for (Pair pair : fields.named("vendors")) {
            refer("access:" + id, "vendors", pair.key(), pair.origin());
            Fields.decimal(pair.value()).ifPresent(tier -> Fields.whole(tier).ifPresent(whole -> vendors.put(pair.key(), whole)));
        }
        return Optional.of(new Access(id, label(id, fields), vendors, fields.origin()));
    }

    private Map<String, BigDecimal> byAttribute(String subject, Fields fields, String property) {
        Map<String, BigDecimal> values = new TreeMap<>();
        for (Pair pair : fields.named(property)) {
            referToAttribute(subject, pair);
            Fields.decimal(pair.value()).ifPresent(value -> values.put(pair.key(), value));
        }
        return values;
    }

    private Optional<Outfit> outfit(String id, Fields fields) {
        return Optional.of(new Outfit(id, label(id, fields), byAttribute("outfit:" + id, fields, "effects"), fields.origin()));
    }

    private Optional<Lens> lens(String id, Fields fields) {
        return Optional.of(new Lens(id, label(id, fields), byAttribute("lens:" + id, fields, "weights"), fields.origin()));
    }

    private Optional<Limit> limit(String id, Fields fields) {
        String subject = "limit:" + id;
        Optional<Word> attribute = fields.word("attribute");
        attribute.ifPresent(word -> refer(subject, "attributes", word.text(), word.origin()));
        Limit.Side side = fields.value("atLeast").isPresent() ? Limit.Side.AT_LEAST : Limit.Side.AT_MOST;
        Optional<Limit.Bound> bound = fields.value(side == Limit.Side.AT_LEAST ? "atLeast" : "atMost").flatMap(node -> bound(subject, node));
        if (attribute.isEmpty() || bound.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Limit(
                id, label(id, fields), attribute.get().text(), side, bound.get(), fields.flag("loaded", true), fields.decimal("near"),
                fields.text("severity").orElse("warning"), fields.origin()));
    }

    private Optional<Limit.Bound> bound(String subject, Node node) {
        if (node instanceof Node.Num number) {
            return Optional.of(new Limit.Fixed(number.value()));
        }
        Optional<Fields> table = Fields.of(node);
        Optional<Word> by = table.flatMap(fields -> fields.word("by"));
        if (by.isEmpty()) {
            return Optional.empty();
        }
        refer(subject, "attributes", by.get().text(), by.get().origin());
        List<Limit.Point> points = new ArrayList<>();
        for (Node item : table.get().items("points")) {
            List<BigDecimal> pair = Fields.items(item).stream().flatMap(value -> Fields.decimal(value).stream()).toList();
            if (pair.size() == 2) {
                points.add(new Limit.Point(pair.get(0), pair.get(1)));
            }
        }
        boolean rising = IntStream.range(1, points.size()).allMatch(i -> points.get(i - 1).x().compareTo(points.get(i).x()) < 0);
        return points.isEmpty() || !rising ? Optional.empty() : Optional.of(new Limit.Table(by.get().text(), List.copyOf(points)));
    }

    private Optional<Waiver> waiver(Fields fields) {
        Optional<Word> rule = fields.word("rule");
        Optional<String> subject = fields.text("subject");
        if (rule.isEmpty() || subject.isEmpty()) {
            return Optional.empty();
        }
        refer("waiver:" + rule.get().text() + " " + subject.get(), "rules", rule.get().text(), rule.get().origin());
        // What is accepted without a reason, nobody has looked at.
        return fields.text("because").filter(reason -> !reason.isBlank())
                .map(reason -> new Waiver(rule.get().text(), subject.get(), reason, fields.text("until"), fields.origin()));
    }
}

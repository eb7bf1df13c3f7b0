package fettle.editor;

import fettle.catalog.Build;
import fettle.catalog.BuildEntry;
import fettle.catalog.BuildReader;
import fettle.catalog.Catalog;
import fettle.catalog.CatalogReader;
import fettle.catalog.Entry;
import fettle.catalog.Part;
import fettle.catalog.Reference;
import fettle.catalog.SlotId;
import fettle.document.Node;
import fettle.document.Places;
import fettle.document.SchemaGuide;
import fettle.engine.RuleInfo;
import fettle.judgement.BuildMention;
import fettle.judgement.CatalogReading;
import fettle.relation.Fit;
import fettle.relation.Relations;
import fettle.space.Placement;
import fettle.space.SlotUse;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionItemKind;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;

/** Offers what can be written at a place: properties with what they mean, ids of the sort that is asked for, slots that are free, parts that fit. */
final class Suggestions {

    /** Where a property alone tells what sort of id it takes, for entries that are not yet whole enough to be read. */
    private static final Map<String, String> SORTS = Map.of("part", "parts", "vendor", "vendors", "good", "goods", "rule", "rules", "kind", "kinds", "platform", "platforms");

    private record Offered(String detail, CompletionItemKind kind) {}

    /** What is no text where a truth value is expected. */
    private static final Set<String> TRUTH = Set.of("true", "false");

    private final Session session;
    private final OpenText text;
    private final boolean builds;
    private final CatalogReading reading;
    private final Catalog catalog;
    private final SchemaGuide guide;

    Suggestions(Session session, OpenText text, boolean builds, CatalogReading reading) {
        this.session = session;
        this.text = text;
        this.builds = builds;
        this.reading = reading;
        this.catalog = reading.catalog();
        this.guide = builds ? SchemaGuide.build() : SchemaGuide.catalog();
    }

    List<CompletionItem> at(Position position) {
        int offset = text.lines().offset(position);
        Optional<Spot> found = Spot.at(text, offset, guide);
        if (found.isEmpty()) {
            return List.of();
        }
        Spot spot = found.get();
        Map<String, Offered> offered = new LinkedHashMap<>();
        Optional<Frame> frame = frame(spot);
        if (frame.isPresent()) {
            offered.putAll(spot.name() ? freeSlots(frame.get()) : fitting(frame.get()));
        } else {
            for (String space : spaces(spot)) {
                offered.putAll(ids(space));
            }
            if (!spot.name() && selects(offset)) {
                ids("kinds").forEach((id, kind) -> offered.put("kind:" + id, kind));
                ids("tags").forEach((id, tag) -> offered.put("tag:" + id, tag));
            }
        }
        if (spot.name()) {
            guide.properties(spot.pointer()).forEach((name, meaning) -> offered.putIfAbsent(name, new Offered(meaning, CompletionItemKind.Property)));
            offered.keySet().removeAll(present(spot));
        } else {
            guide.choices(spot.pointer()).forEach(choice -> offered.putIfAbsent(choice, new Offered("", CompletionItemKind.EnumMember)));
        }
        List<CompletionItem> items = new ArrayList<>();
        offered.forEach((word, what) -> items.add(item(spot, word, what)));
        return items;
    }

    private CompletionItem item(Spot spot, String word, Offered what) {
        CompletionItem item = new CompletionItem(word);
        item.setKind(what.kind());
        if (!what.detail().isEmpty()) {
            item.setDetail(what.detail());
        }
        Extents.Stretch typed = spot.typed();
        String rest = text.lines().text().substring(typed.to());
        if (TRUTH.contains(word) && guide.types(spot.pointer()).contains("boolean") && !spot.name()) {
            boolean quoted = spot.quotes() == Spot.Quotes.THERE;
            boolean closed = quoted && !rest.isEmpty() && "\"'".indexOf(rest.charAt(0)) >= 0;
            item.setFilterText(quoted ? text.lines().text().charAt(typed.from() - 1) + word : word);
            item.setTextEdit(Either.forLeft(new TextEdit(text.lines().range(quoted ? typed.from() - 1 : typed.from(), closed ? typed.to() + 1 : typed.to()), spot.before() + word)));
            return item;
        }
        String after = spot.after().contains(":") && rest.stripLeading().startsWith(":") ? spot.after().substring(0, spot.after().indexOf(':')) : spot.after();
        item.setFilterText(word);
        item.setTextEdit(Either.forLeft(new TextEdit(text.lines().range(typed.from(), typed.to()), spot.before() + spot.text(word) + after)));
        return item;
    }

    private static Set<String> present(Spot spot) {
        return spot.document().root().flatMap(root -> Places.at(root, spot.pointer()))
                .map(node -> node instanceof Node.Obj object ? object.members().keySet() : Set.<String>of()).orElse(Set.of());
    }

    /** The sorts of ids that the readers of documents take the mark for. */
    private Set<String> spaces(Spot spot) {
        Set<String> spaces = new TreeSet<>();
        if (builds) {
            BuildReader.read(spot.document()).stream().map(BuildMention::of).flatMap(List::stream)
                    .filter(mention -> mention.id().equals(Spot.MARK)).map(BuildMention::space).forEach(spaces::add);
        } else {
            references(spot).map(Reference::space).forEach(spaces::add);
        }
        String last = spot.pointer().substring(spot.pointer().lastIndexOf('/') + 1);
        if (spaces.isEmpty() && !spot.name() && SORTS.containsKey(last)) {
            spaces.add(SORTS.get(last));
        }
        return spaces;
    }

    private static Stream<Reference> references(Spot spot) {
        return CatalogReader.read(List.of(spot.document())).references().stream().filter(reference -> reference.id().equals(Spot.MARK));
    }

    /** Whether a selector may stand there: then, and only then, a kind is understood there by its prefix. */
    private boolean selects(int offset) {
        return !builds && Spot.at(text, offset, guide, "kind:" + Spot.MARK).stream().flatMap(Suggestions::references).anyMatch(reference -> reference.space().equals("kinds"));
    }

    private Map<String, Offered> ids(String space) {
        Map<String, Offered> ids = new TreeMap<>();
        switch (space) {
            case "parts" -> catalog.parts().values().forEach(part -> ids.put(part.id(), offered(part)));
            case "platforms" -> catalog.platforms().values().forEach(part -> ids.put(part.id(), offered(part)));
            case "attributes" -> catalog.attributes().values().forEach(each -> ids.put(each.id(), new Offered(each.unit(), CompletionItemKind.Field)));
            case "rules" -> session.rules().index().rules().stream().filter(rule -> rule.severity().isPresent())
                    .forEach(rule -> ids.put(rule.name(), new Offered(rule.law(), CompletionItemKind.Constant)));
            case "tags" -> catalog.parts().values().stream().flatMap(part -> part.names().stream()).map(name -> name.name())
                    .filter(name -> name.startsWith("tag:")).forEach(name -> ids.put(name.substring("tag:".length()), new Offered("", CompletionItemKind.Keyword)));
            case "slot tags" -> Stream.concat(catalog.platforms().values().stream(), catalog.parts().values().stream())
                    .flatMap(part -> part.slots().stream()).flatMap(slot -> slot.tags().stream())
                    .forEach(tag -> ids.put(tag.tag(), new Offered("", CompletionItemKind.Keyword)));
            default -> catalog.entries().stream().filter(entry -> entry.section().equals(space)).map(Entry::id)
                    .forEach(id -> ids.put(id, new Offered("", CompletionItemKind.Reference)));
        }
        ids.remove(Spot.MARK);
        return ids;
    }

    private static Offered offered(Part part) {
        return new Offered(part.label() + part.kind().map(kind -> ", " + kind).orElse(""), CompletionItemKind.Value);
    }

    /** A build, or what a platform comes with, in which something is being placed; {@code path} is where, if that is already said. */
    private record Frame(String platform, List<BuildEntry> entries, String path) {}

    private Optional<Frame> frame(Spot spot) {
        String map = builds ? "parts" : "factory";
        int at = (spot.pointer() + "/").indexOf("/" + map + "/");
        if (at < 0) {
            return Optional.empty();
        }
        String owner = spot.pointer().substring(0, at);
        String inside = spot.pointer().substring(Math.min(spot.pointer().length(), at + map.length() + 2));
        if (!inside.isEmpty() && (spot.name() || !inside.matches("[^/]+(/\\d+)?(/part)?"))) {
            return Optional.empty();
        }
        String path = inside.isEmpty() ? "" : inside.split("/", -1)[0].replace("~1", "/").replace("~0", "~");
        Optional<Frame> frame = builds
                ? BuildReader.read(spot.document()).stream().filter(build -> build.origin().pointer().equals(owner)).findFirst()
                        .map((Build build) -> new Frame(build.platform().id(), build.parts(), path))
                : CatalogReader.read(List.of(spot.document())).platforms().values().stream().filter(platform -> platform.origin().pointer().equals(owner)).findFirst()
                        .map(platform -> new Frame(platform.id(), platform.factory(), path));
        return frame.filter(known -> catalog.platforms().containsKey(known.platform()));
    }

    private Map<String, Offered> freeSlots(Frame frame) {
        Map<String, Offered> free = new LinkedHashMap<>();
        Placement placement = Placement.of(reading.relations(), frame.platform(), frame.entries());
        for (SlotUse use : placement.slots()) {
            if (use.occupants().isEmpty()) {
                String label = reading.relations().slot(use.slot()).map(slot -> slot.label() + (slot.required() ? ", required" : "")).orElse("");
                free.put(use.path(), new Offered(label, CompletionItemKind.Module));
            }
        }
        return free;
    }

    private Map<String, Offered> fitting(Frame frame) {
        Relations relations = reading.relations();
        Optional<SlotId> slot = Answers.slot(relations, frame.platform(), frame.entries(), frame.path());
        if (slot.isEmpty()) {
            return ids("parts");
        }
        Map<String, Offered> fitting = new LinkedHashMap<>();
        for (String id : relations.candidates(slot.get())) {
            String by = relations.ways(slot.get(), id).stream().map(Fit::by).collect(Collectors.joining(", "));
            String label = Optional.ofNullable(catalog.parts().get(id)).map(Part::label).orElse(id);
            fitting.put(id, new Offered(label + ", by " + by, CompletionItemKind.Value));
        }
        return fitting;
    }
}

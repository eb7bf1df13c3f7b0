package fettle.editor;

import fettle.catalog.Build;
import fettle.catalog.BuildEntry;
import fettle.catalog.BuildReader;
import fettle.catalog.Catalog;
import fettle.catalog.Entry;
import fettle.catalog.HasName;
import fettle.catalog.Part;
import fettle.catalog.Reference;
import fettle.catalog.Slot;
import fettle.catalog.SlotHasTag;
import fettle.catalog.SlotId;
import fettle.document.Document;
import fettle.document.Origin;
import fettle.document.SchemaGuide;
import fettle.engine.RuleInfo;
import fettle.judgement.BuildMention;
import fettle.judgement.CatalogReading;
import fettle.relation.Relations;
import fettle.space.Placement;
import fettle.space.SlotUse;
import fettle.view.ExplainView;
import fettle.view.IdSort;
import fettle.view.TextStyle;
import fettle.view.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.MarkupContent;
import org.eclipse.lsp4j.MarkupKind;
import org.eclipse.lsp4j.Position;

/** Answers what is known of the thing that someone points at: in words, where it is given, and where it is mentioned. */
final class Answers {

    private final Session session;
    private final Desk desk;
    private final OpenText text;
    private final boolean builds;
    private final CatalogReading reading;
    private final Catalog catalog;

    Answers(Session session, Desk desk, OpenText text, CatalogReading reading) {
        this.session = session;
        this.text = text;
        this.desk = desk;
        this.builds = Session.holdsBuilds(desk, text.file());
        this.reading = reading;
        this.catalog = reading.catalog();
    }

    private Optional<Pointed> pointed(Position position) {
        Document document = text.read();
        return Pointed.at(text.lines(), document, builds, text.lines().offset(position));
    }

    /** All that is known of it. */
    Optional<Hover> hover(Position position) {
        return pointed(position).flatMap(pointed -> words(pointed)
                .map(words -> new Hover(new MarkupContent(session.plain() ? MarkupKind.PLAINTEXT : MarkupKind.MARKDOWN, words), text.lines().range(pointed.stretch().from(), pointed.stretch().to()))));
    }

    private Optional<String> words(Pointed pointed) {
        if (pointed instanceof Pointed.Key key) {
            return (builds ? SchemaGuide.build() : SchemaGuide.catalog()).meaning(key.pointer());
        } else if (pointed instanceof Pointed.SlotPath path) {
            return slot(reading.relations(), path.platform(), path.entries(), path.path()).flatMap(slot -> explained("slot", slot.toString()));
        }
        Pointed.Name name = (Pointed.Name) pointed;
        return name.what().equals("rule") ? session.rules().index().find(name.id()).map(RuleInfo::page) : explained(name.what(), name.id());
    }

    private Optional<String> explained(String what, String id) {
        List<IdSort.Named> named = IdSort.named(catalog, (what.equals("slot tag") ? "tag" : what) + ":" + id);
        if (named.isEmpty()) {
            return Optional.empty();
        }
        Wording wording = new Wording(session.rules().index(), catalog);
        String laidOut = new ExplainView(wording, reading.relations(), TextStyle.FULL).about(named, Optional.empty());
        return Optional.of(session.plain() ? laidOut.stripTrailing() : fenced(laidOut));
    }

    /** A text that is laid out in columns; the fence is longer than any that the text could hold. */
    private static String fenced(String laidOut) {
        StringBuilder fence = new StringBuilder("```");
        while (laidOut.contains(fence)) {
            fence.append('`');
        }
        return fence + "text\n" + laidOut.stripTrailing() + "\n" + fence;
    }

    /** The slot that a path leads to, given what else is placed. */
    static Optional<SlotId> slot(Relations relations, String platform, List<BuildEntry> entries, String path) {
        if (!relations.catalog().platforms().containsKey(platform)) {
            return Optional.empty();
        }
        return Placement.of(relations, platform, entries).slots().stream().filter(use -> use.path().equals(path)).map(SlotUse::slot).findFirst();
    }

    /** Where it is given. */
    List<Location> definition(Position position) {
        return pointed(position).map(pointed -> {
            if (pointed instanceof Pointed.SlotPath path) {
                return slot(reading.relations(), path.platform(), path.entries(), path.path()).map(this::ofSlot).orElse(List.of());
            }
            return pointed instanceof Pointed.Name name ? given(name) : List.<Location>of();
        }).orElse(List.of());
    }

    private List<Location> ofSlot(SlotId slot) {
        return given("slot", slot.toString());
    }

    private List<Location> given(Pointed.Name name) {
        return switch (name.what()) {
            case "tag" -> locations(hosts().flatMap(part -> part.names().stream()).filter(has -> has.name().equals("tag:" + name.id())).map(HasName::origin));
            case "slot tag" -> locations(hosts().flatMap(part -> part.slots().stream()).map(Slot::tags).flatMap(List::stream)
                    .filter(tag -> tag.tag().equals(name.id())).map(SlotHasTag::origin));
            default -> given(name.what(), name.id());
        };
    }

    private List<Location> given(String what, String id) {
        return locations(catalog.entries().stream().filter(entry -> entry.subject().equals(what + ":" + id)).map(Entry::origin));
    }

    private Stream<Part> hosts() {
        return Stream.concat(catalog.platforms().values().stream(), catalog.parts().values().stream());
    }

    private List<Location> locations(Stream<Origin> places) {
        return places.sorted().map(origin -> session.location(desk, origin)).toList();
    }

    /** Where it is mentioned in the catalog and in builds of it; and where it is given, if that is asked for. A slot is mentioned by the paths that lead through it. */
    List<Location> references(Position position, boolean given) {
        return pointed(position).map(pointed -> {
            if (pointed instanceof Pointed.SlotPath path) {
                return slot(reading.relations(), path.platform(), path.entries(), path.path()).map(slot -> references("slot", slot.toString(), given ? ofSlot(slot) : List.of())).orElse(List.of());
            }
            return pointed instanceof Pointed.Name name ? references(name, given) : List.<Location>of();
        }).orElse(List.of());
    }

    private List<Location> references(Pointed.Name name, boolean given) {
        return references(name.what(), name.id(), given ? given(name) : List.of());
    }

    private List<Location> references(String what, String id, List<Location> given) {
        List<Build> builds = session.builds(desk).stream().flatMap(document -> BuildReader.read(document).stream()).toList();
        Stream<Reference> named = Stream.concat(catalog.references().stream(), builds.stream().flatMap(build -> BuildMention.of(build).stream()).map(BuildMention::reference));
        Stream<Origin> mentions = what.equals("slot")
                ? Stream.concat(
                        builds.stream().flatMap(build -> through(id, build.platform().id(), build.parts())),
                        catalog.platforms().values().stream().flatMap(platform -> through(id, platform.id(), platform.factory())))
                : named.filter(reference -> reference.what().equals(what) && reference.id().equals(id)).map(Reference::origin);
        List<Location> found = new ArrayList<>(given);
        found.addAll(locations(mentions));
        return found;
    }

    /** The places of the paths that lead to a slot or on through it. */
    private Stream<Origin> through(String slot, String platform, List<BuildEntry> entries) {
        if (entries.isEmpty() || !catalog.platforms().containsKey(platform)) {
            return Stream.empty();
        }
        List<String> paths = Placement.of(reading.relations(), platform, entries).slots().stream()
                .filter(use -> use.slot().toString().equals(slot)).map(SlotUse::path).toList();
        return entries.stream().filter(entry -> paths.stream().anyMatch(path -> entry.path().equals(path) || entry.path().startsWith(path + "/") || entry.path().startsWith(path + ":")))
                .map(BuildEntry::pathOrigin).distinct();
    }
}

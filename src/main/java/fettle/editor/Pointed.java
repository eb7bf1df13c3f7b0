package fettle.editor;

import fettle.catalog.Build;
import fettle.catalog.BuildEntry;
import fettle.catalog.BuildReader;
import fettle.catalog.Catalog;
import fettle.catalog.CatalogReader;
import fettle.catalog.Entry;
import fettle.catalog.Reference;
import fettle.document.Document;
import fettle.document.Node;
import fettle.document.Origin;
import fettle.judgement.BuildMention;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a document says at the place that someone points at. */
sealed interface Pointed {

    /** Where it stands. */
    Extents.Stretch stretch();

    /** An id, where it is given or where it is mentioned; {@code what} is {@code part}, {@code slot}, {@code slot tag}, … */
    record Name(String what, String id, Extents.Stretch stretch) implements Pointed {}

    /** A path in a build, or in what a platform comes with. */
    record SlotPath(String platform, List<BuildEntry> entries, String path, Extents.Stretch stretch) implements Pointed {}

    /** The name of a property. */
    record Key(String pointer, Extents.Stretch stretch) implements Pointed {}

    /** What stands at an offset of a text that was read as {@code document}; empty where that is nothing that has a meaning. */
    static Optional<Pointed> at(Lines lines, Document document, boolean builds, int offset) {
        int line = lines.position(offset).getLine() + 1;
        List<Token> tokens = new ArrayList<>();
        document.root().ifPresent(root -> gather(root, line, tokens));
        for (Token token : tokens) {
            Extents.Stretch stretch = Extents.inner(lines, token.origin());
            if (stretch.holds(offset)) {
                Optional<Pointed> named = builds ? inBuild(document, token, stretch) : inCatalog(document, token, stretch);
                if (named.isPresent() || token.key()) {
                    return named.or(() -> Optional.of(new Key(token.origin().pointer(), stretch)));
                }
            }
        }
        return Optional.empty();
    }

    /** A name or a plain value. */
    record Token(Origin origin, boolean key) {

        boolean at(Origin other) {
            return origin.line() == other.line() && origin.column() == other.column();
        }
    }

    private static void gather(Node node, int line, List<Token> tokens) {
        if (node instanceof Node.Obj object) {
            object.members().values().forEach(member -> {
                if (member.key().line() == line) {
                    tokens.add(new Token(member.key(), true));
                }
                gather(member.value(), line, tokens);
            });
        } else if (node instanceof Node.Arr array) {
            array.items().forEach(item -> gather(item, line, tokens));
        } else if (node.origin().line() == line) {
            tokens.add(new Token(node.origin(), false));
        }
    }

    private static Optional<Pointed> inCatalog(Document document, Token token, Extents.Stretch stretch) {
        Catalog read = CatalogReader.read(List.of(document));
        for (Reference reference : read.references()) {
            if (token.at(reference.origin())) {
                return Optional.of(new Name(reference.what(), reference.id(), stretch));
            }
        }
        for (Entry entry : read.entries()) {
            if (token.at(entry.origin())) {
                String subject = entry.subject();
                return Optional.of(new Name(entry.what(), subject.substring(subject.indexOf(':') + 1), stretch));
            }
        }
        return read.platforms().values().stream()
                .flatMap(platform -> path(platform.id(), platform.factory(), token, stretch).stream()).findFirst();
    }

    private static Optional<Pointed> inBuild(Document document, Token token, Extents.Stretch stretch) {
        for (Build build : BuildReader.read(document)) {
            for (BuildMention mention : BuildMention.of(build)) {
                if (token.at(mention.reference().origin())) {
                    return Optional.of(new Name(mention.reference().what(), mention.id(), stretch));
                }
            }
            Optional<Pointed> path = path(build.platform().id(), build.parts(), token, stretch);
            if (path.isPresent()) {
                return path;
            }
        }
        return Optional.empty();
    }

    private static Optional<Pointed> path(String platform, List<BuildEntry> entries, Token token, Extents.Stretch stretch) {
        return entries.stream().filter(entry -> token.key() && token.at(entry.pathOrigin())).findFirst()
                .map(entry -> new SlotPath(platform, entries, entry.path(), stretch));
    }
}

package fettle.catalog;

import fettle.catalog.Fields.Pair;
import fettle.catalog.Fields.Word;
import fettle.document.Document;
import fettle.document.Node;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** Reads the builds of a build document. */
public final class BuildReader {

    private BuildReader() {}

    /** The builds that can be read, in the order written; what is malformed is reported by the schema check. */
    public static List<Build> read(Document document) {
        List<Build> builds = new ArrayList<>();
        document.root().flatMap(Fields::of).ifPresent(root -> {
            root.value("build").flatMap(Fields::of).flatMap(BuildReader::build).ifPresent(builds::add);
            root.items("builds").forEach(node -> Fields.of(node).flatMap(BuildReader::build).ifPresent(builds::add));
        });
        return List.copyOf(builds);
    }

    private static Optional<Build> build(Fields fields) {
        Optional<String> id = fields.written("id").map(Word::text);
        Optional<Build.Located> platform = located(fields, "platform");
        if (id.isEmpty() || platform.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Build(
                id.get(),
                fields.text("label").orElse(id.get()),
                platform.get(),
                fields.text("patch"),
                entries(fields.pairs("parts")),
                fields.flag("loaded", true),
                located(fields, "outfit"),
                located(fields, "access"),
                fields.words("owned").stream().map(BuildReader::located).toList(),
                fields.amount("budget"),
                located(fields, "lens"),
                fields.origin()));
    }

    private static Optional<Build.Located> located(Fields fields, String name) {
        return fields.written(name).map(BuildReader::located);
    }

    private static Build.Located located(Word word) {
        return new Build.Located(word.text(), word.origin());
    }

    /** The parts of a build, from a map of paths. */
    static List<BuildEntry> entries(List<Pair> pairs) {
        List<BuildEntry> entries = new ArrayList<>();
        for (Pair pair : pairs) {
            if (pair.value() instanceof Node.Arr array) {
                int position = 0;
                for (Node item : array.items()) {
                    entries.add(entry(pair, position++, item));
                }
            } else {
                entries.add(entry(pair, 0, pair.value()));
            }
        }
        return List.copyOf(entries);
    }

    private static BuildEntry entry(Pair pair, int position, Node value) {
        if (value instanceof Node.Text text) {
            return new BuildEntry(pair.key(), position, text.value(), OptionalInt.empty(), pair.origin(), text.origin());
        }
        Optional<Fields> fields = Fields.of(value);
        Optional<Word> part = fields.flatMap(read -> read.word("part"));
        Optional<BigDecimal> at = fields.flatMap(read -> read.decimal("at"));
        return new BuildEntry(pair.key(), position, part.map(Word::text).orElse(""), at.map(Fields::whole).orElse(OptionalInt.empty()), pair.origin(),
                part.map(Word::origin).orElse(value.origin()));
    }
}

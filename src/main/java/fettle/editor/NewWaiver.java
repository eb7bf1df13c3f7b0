package fettle.editor;

import fettle.document.Document;
import fettle.document.Documents;
import fettle.document.Node;
import fettle.document.Origin;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextEdit;

/** Puts a waiver into a document: before the first that it has, into the empty brackets of such, or else at the end of one in YAML. */
record NewWaiver(Path file, Lines lines) {

    private static final String SECTION = "waivers";

    /** The change after which the document reads as it did, and holds the waiver; empty where it isn't written so that a piece can simply be put in. */
    Optional<TextEdit> of(String rule, String subject) {
        if (!(OpenText.read(file, lines.text()).root().orElse(null) instanceof Node.Obj root)) {
            return Optional.empty();
        }
        Optional<TextEdit> edit = root.members().containsKey(SECTION) ? before(root, rule, subject).or(() -> inBrackets(root, rule, subject))
                : Documents.isYaml(file) ? atTheEnd(root, rule, subject) : Optional.empty();
        return edit.filter(made -> holds(root, lines.with(made.getRange(), made.getNewText()), rule, subject));
    }

    private Optional<TextEdit> before(Node.Obj root, String rule, String subject) {
        List<Node> waivers = waivers(root);
        if (waivers.isEmpty()) {
            return Optional.empty();
        }
        Origin first = waivers.get(0).origin();
        String start = lines.line(first.line() - 1);
        int dash = start.indexOf("- ");
        if (dash < 0 || !start.substring(0, dash).isBlank()) {
            return Optional.empty();
        }
        Position at = new Position(first.line() - 1, 0);
        return Optional.of(new TextEdit(new Range(at, at), waiver(rule, subject, start.substring(0, dash))));
    }

    /** Before the first, on a line of its own where that has one; or behind the bracket that opens. */
    private Optional<TextEdit> inBrackets(Node.Obj root, String rule, String subject) {
        List<Node> waivers = waivers(root);
        int at = waivers.isEmpty() ? lines.offset(root.members().get(SECTION).value().origin()) + 1 : lines.offset(waivers.get(0).origin());
        String before = lines.text().substring(0, Math.min(at, lines.text().length()));
        String indent = before.substring(Math.max(before.lastIndexOf('\n'), before.lastIndexOf('\r')) + 1);
        String gap = waivers.isEmpty() ? "" : indent.isBlank() ? "," + lineEnd() + indent : ", ";
        String name = Documents.isYaml(file) ? "" : "\"";
        String written = "{ " + name + "rule" + name + ": " + name + rule + name + ", " + name + "subject" + name + ": " + Written.inQuotes(subject)
                + ", " + name + "because" + name + ": \"\" }";
        Position place = lines.position(at);
        return Optional.of(new TextEdit(new Range(place, place), written + gap));
    }

    /** What is below the first property of the document stands in the column in which that stands. */
    private Optional<TextEdit> atTheEnd(Node.Obj root, String rule, String subject) {
        String written = lines.text();
        Position end = lines.position(written.length());
        return root.members().values().stream().findFirst().map(member -> {
            String indent = " ".repeat(member.key().column() - 1);
            String section = (written.endsWith("\n") ? "" : lineEnd()) + indent + SECTION + ":" + lineEnd();
            return new TextEdit(new Range(end, end), section + waiver(rule, subject, indent + "  "));
        });
    }

    private String waiver(String rule, String subject, String indent) {
        return indent + "- rule: " + rule + lineEnd() + indent + "  subject: " + quoted(subject) + lineEnd() + indent + "  because: \"\"" + lineEnd();
    }

    private String lineEnd() {
        return lines.text().contains("\r\n") ? "\r\n" : "\n";
    }

    /** Subjects hold colons, and may hold whatever a file name does. */
    private static String quoted(String subject) {
        return subject.matches("[a-z]+:[a-z0-9._/-]+") ? subject : Written.inQuotes(subject);
    }

    /** Whether a text reads as the document did, but for a first waiver that is new. */
    private boolean holds(Node.Obj before, String after, String rule, String subject) {
        Document document = OpenText.read(file, after);
        if (!document.problems().isEmpty() || !(document.root().orElse(null) instanceof Node.Obj root) || waivers(root).isEmpty()) {
            return false;
        }
        List<String> sections = before.members().keySet().stream().filter(section -> !section.equals(SECTION)).toList();
        return root.members().keySet().stream().filter(section -> !section.equals(SECTION)).toList().equals(sections)
                && waivers(root).size() == waivers(before).size() + 1
                && waivers(root).get(0) instanceof Node.Obj waiver && says(waiver, "rule", rule) && says(waiver, "subject", subject);
    }

    private static boolean says(Node.Obj waiver, String name, String value) {
        return waiver.members().containsKey(name) && waiver.members().get(name).value() instanceof Node.Text text && text.value().equals(value);
    }

    private static List<Node> waivers(Node.Obj root) {
        return root.members().containsKey(SECTION) && root.members().get(SECTION).value() instanceof Node.Arr waivers ? waivers.items() : List.of();
    }
}

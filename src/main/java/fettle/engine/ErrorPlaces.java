package fettle.engine;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.kie.api.builder.Message;

/**
 * Leads the builder's errors back to the lines that people wrote.
 *
 * <p>The builder names a DRL line only for some errors. Others quote an expression, or stand in Java code generated from a
 * consequence; for these the quoted text is sought in the rule files, white space aside.
 */
final class ErrorPlaces {
    private static final String SOURCE_OF = "Java source of ";

    private ErrorPlaces() {
    }

    static List<RuleProblem> of(List<Message> messages, Map<String, DrlFile> files) {
        List<RuleProblem> problems = new ArrayList<>();
        for (Message message : messages) {
            if (message.getText().startsWith(SOURCE_OF)) {
                continue;
            }
            DrlFile file = message.getPath() == null ? null : files.get(message.getPath());
            problems.add(file == null ? inGeneratedCode(message, messages, files.values()) : inFile(message, file));
        }
        return problems;
    }

    private static RuleProblem inFile(Message message, DrlFile file) {
        String text = RuleText.oneLine(message.getText());
        int line = message.getLine() > 0 ? message.getLine() : quoted(text, file).orElse(0);
        return new RuleProblem(file.shown(), line, 0, text);
    }

    /** The message ends with what it is about, after a colon. */
    private static OptionalInt quoted(String text, DrlFile file) {
        int colon = text.indexOf(": ");
        return colon < 0 ? OptionalInt.empty() : lineOf(text.substring(colon + 2), file.text());
    }

    private static RuleProblem inGeneratedCode(Message message, List<Message> all, Collection<DrlFile> files) {
        String text = RuleText.oneLine(message.getText());
        Optional<String> statement = all.stream().map(Message::getText)
                .filter(source -> source.startsWith(SOURCE_OF + message.getPath()))
                .findFirst().flatMap(source -> source.lines().skip(message.getLine()).findFirst());
        for (DrlFile file : files) {
            OptionalInt line = statement.map(wanted -> lineOf(wanted, file.text())).orElse(OptionalInt.empty());
            if (line.isPresent()) {
                return new RuleProblem(file.shown(), line.getAsInt(), 0, text);
            }
        }
        String about = statement.map(String::strip).filter(wanted -> !wanted.isEmpty())
                .map(wanted -> " (in: " + wanted + ")").orElse("");
        return RuleProblem.of(files.size() == 1 ? files.iterator().next().shown() : "rules", text + about);
    }

    private static OptionalInt lineOf(String wanted, String text) {
        String needle = wanted.replaceAll("\\s+", "");
        if (needle.isEmpty()) {
            return OptionalInt.empty();
        }
        StringBuilder dense = new StringBuilder();
        List<Integer> lines = new ArrayList<>();
        int line = 1;
        for (char each : text.toCharArray()) {
            if (each == '\n') {
                line++;
            }
            if (!Character.isWhitespace(each)) {
                dense.append(each);
                lines.add(line);
            }
        }
        boolean word = Character.isJavaIdentifierPart(needle.charAt(needle.length() - 1));
        for (int at = dense.indexOf(needle); at >= 0; at = dense.indexOf(needle, at + 1)) {
            int end = at + needle.length();
            boolean inWord = word && end < dense.length() && Character.isJavaIdentifierPart(dense.charAt(end));
            if (!inWord || !lines.get(end - 1).equals(lines.get(end))) {
                return OptionalInt.of(lines.get(at));
            }
        }
        return OptionalInt.empty();
    }
}

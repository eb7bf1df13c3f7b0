package fettle.rules;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** One folder below a rule's {@code cases}: a small catalog, with or without builds, and what the program says of it. */
record RuleCase(String rule, Path folder) {

    private static final Path RULES = Path.of("rules");

    /** A neighbour of the case, one textual replacement away. */
    record Near(String file, String old, String replacement) {

        static Near of(String line) {
            int colon = line.indexOf(": ");
            int arrow = line.indexOf(" => ");
            if (colon < 0 || arrow < colon) {
                throw new IllegalArgumentException("a neighbour is written FILE: OLD => NEW, not " + line);
            }
            return new Near(line.substring(0, colon), line.substring(colon + 2, arrow), line.substring(arrow + 4));
        }

        @Override
        public String toString() {
            return file + ": " + old + " => " + replacement;
        }
    }

    /** All cases of all rules, in order. */
    static List<RuleCase> all() {
        List<RuleCase> cases = new ArrayList<>();
        for (Path topic : folders(RULES)) {
            for (Path rule : folders(topic)) {
                for (Path folder : folders(rule.resolve("cases"))) {
                    cases.add(new RuleCase(rule.getFileName().toString(), folder));
                }
            }
        }
        return cases;
    }

    private static List<Path> folders(Path parent) {
        if (!Files.isDirectory(parent)) {
            return List.of();
        }
        try (Stream<Path> inside = Files.list(parent)) {
            return inside.filter(Files::isDirectory).sorted().toList();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    String name() {
        return rule + ", " + folder.getFileName();
    }

    Path expectedFile() {
        return folder.resolve("expected.txt");
    }

    String expected() throws IOException {
        return Files.exists(expectedFile()) ? Files.readString(expectedFile()) : "";
    }

    List<Near> neighbours() throws IOException {
        Path file = folder.resolve("near.txt");
        return Files.exists(file) ? Files.readAllLines(file).stream().filter(line -> !line.isBlank()).map(Near::of).toList() : List.of();
    }

    /** What the program says of the case. */
    Answer answer(String format) {
        return Answer.on(folder, format);
    }

    /** What the program says of a neighbour, which is made below a scratch folder, as if it stood where the case does. */
    Answer answer(Near near, Path scratch) throws IOException {
        Path copy = CatalogCopy.of(folder, scratch);
        Path file = copy.resolve(near.file());
        String text = Files.readString(file);
        String old = near.old().replace("\\n", "\n");
        int first = text.indexOf(old);
        if (first < 0 || text.indexOf(old, first + 1) >= 0) {
            throw new IllegalArgumentException("must stand once in " + near.file() + ": " + near.old());
        }
        Files.writeString(file, text.replace(old, near.replacement().replace("\\n", "\n")));
        return Answer.on(copy, "json").telling(copy, folder);
    }
}

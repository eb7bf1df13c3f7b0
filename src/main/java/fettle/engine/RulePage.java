package fettle.engine;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The page that explains a rule, read from Markdown.
 *
 * <p>A page: title, law, and sections.
 *
 * @param file     as shown to people
 * @param title    the text of the one top heading, with its line
 * @param law      the first paragraph below the title, with its line
 * @param sections the text below each second-level heading, in page order
 * @param text     the whole page
 */
record RulePage(String file, Place title, Place law, Map<String, String> sections, String text) {
    /** A text and the line where it starts; line 0 and an empty text where there is none. */
    record Place(String text, int line) {
        static final Place NOWHERE = new Place("", 0);
    }

    static RulePage parse(String file, String text) {
        Place title = Place.NOWHERE;
        Place law = Place.NOWHERE;
        boolean lawOpen = true;
        boolean fenced = false;
        Map<String, StringBuilder> sections = new LinkedHashMap<>();
        StringBuilder section = new StringBuilder();
        List<String> lines = text.lines().toList();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i);
            if (line.startsWith("```")) {
                fenced = !fenced;
            }
            if (!fenced && line.startsWith("# ") && title.line() == 0) {
                title = new Place(line.substring(2).strip(), i + 1);
            } else if (!fenced && line.startsWith("## ")) {
                section = new StringBuilder();
                sections.put(line.substring(3).strip(), section);
            } else if (!sections.isEmpty()) {
                section.append(line).append('\n');
            } else if (title.line() > 0 && lawOpen && !line.isBlank()) {
                law = law.line() == 0 ? new Place(line.strip(), i + 1) : new Place(law.text() + " " + line.strip(), law.line());
            } else if (law.line() > 0) {
                lawOpen = false;
            }
        }
        Map<String, String> plain = new LinkedHashMap<>();
        sections.forEach((heading, body) -> plain.put(heading, body.toString().strip()));
        return new RulePage(file, title, law, plain, text.strip() + "\n");
    }

    boolean explains(String heading) {
        return !sections.getOrDefault(heading, "").isBlank();
    }

    /** The items of the list below {@code ## Remedy}, each on one line. */
    List<String> remedies() {
        List<String> items = new ArrayList<>();
        for (String line : sections.getOrDefault("Remedy", "").lines().toList()) {
            if (line.startsWith("- ")) {
                items.add(line.substring(2).strip());
            } else if (!line.isBlank() && !items.isEmpty()) {
                items.set(items.size() - 1, items.get(items.size() - 1) + " " + line.strip());
            }
        }
        return List.copyOf(items);
    }
}

package fettle.view;

import fettle.engine.RuleIndex;
import fettle.engine.RuleInfo;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Shows the rules for people: all by topic, or the page of one. */
public final class RulesText {

    private static final Pattern CODE = Pattern.compile("`([^`]*)`");
    private static final Pattern NAME = Pattern.compile("\\{([A-Za-z][A-Za-z0-9_]*)(?:\\|(?:and|or|money))?\\}");

    private final boolean colour;

    public RulesText(boolean colour) {
        this.colour = colour;
    }

    /** Every rule with its severity and its law, by topic. */
    public String list(RuleIndex rules) {
        Sheet sheet = new Sheet(colour);
        Map<String, List<RuleInfo>> topics = rules.rules().stream().collect(Collectors.groupingBy(RuleInfo::topic, TreeMap::new, Collectors.toList()));
        int name = Grid.widest(Phrases.each(rules.rules(), RuleInfo::name));
        topics.forEach((topic, members) -> {
            sheet.line(Span.strong(topic));
            members.stream().sorted(Comparator.comparing(RuleInfo::name)).forEach(rule -> sheet.tabbed(
                    severity(rule), Grid.left(rule.name(), name) + "  ", Span.plain(rule.law())));
            sheet.blank();
        });
        sheet.paragraph(0, 0, Span.plain(Phrases.count(rules.rules().size(), "rule", "rules") + "; \"fettle rules RULE\" shows the page of one."));
        return sheet.toString();
    }

    private static Span severity(RuleInfo rule) {
        return rule.severity().map(severity -> new Span(severity.word(), FindingText.tone(severity))).orElse(Span.faint("-"));
    }

    /** A rule's page. */
    public String page(RuleInfo rule) {
        Sheet sheet = new Sheet(colour);
        boolean code = false;
        StringBuilder paragraph = new StringBuilder();
        for (String line : rule.page().lines().toList()) {
            boolean fence = line.startsWith("```");
            if (code && !fence) {
                sheet.line(Span.plain("    " + line));
            } else if (fence || line.isBlank() || line.startsWith("#") || line.startsWith("- ")) {
                flush(sheet, paragraph);
                if (line.startsWith("#")) {
                    sheet.line(Span.strong(line.replaceFirst("^#+ *", "")));
                } else if (line.startsWith("- ")) {
                    paragraph.append(line);
                } else if (line.isBlank()) {
                    sheet.blank();
                }
                code ^= fence;
            } else {
                paragraph.append(paragraph.isEmpty() ? "" : " ").append(line.strip());
            }
        }
        flush(sheet, paragraph);
        rule.severity().ifPresent(severity -> {
            sheet.blank();
            sheet.paragraph(0, 2, Span.faint("Usually drawn as: "), new Span(severity.word(), FindingText.tone(severity)), Span.faint("; topic: " + rule.topic()));
        });
        return sheet.toString();
    }

    private static void flush(Sheet sheet, StringBuilder paragraph) {
        if (!paragraph.isEmpty()) {
            boolean item = paragraph.indexOf("- ") == 0;
            String text = NAME.matcher(CODE.matcher(paragraph).replaceAll("$1")).replaceAll("<$1>");
            sheet.paragraph(item ? 2 : 0, item ? 2 : 0, Span.plain(text));
            paragraph.setLength(0);
        }
    }
}

package fettle.engine;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * What is known of one rule: its metadata, its page and the DRL rules that make it up.
 *
 * <p>One folder of rules.
 *
 * @param name     the one name of folder, rule, page and findings
 * @param topic    the folder above
 * @param severity how much its findings matter; empty where it only derives relations
 * @param law      what must hold, one sentence
 * @param message  the wording of a finding or reason, with {@code {names}} to fill in
 * @param alike    in words that follow a number, what findings are that have one cause, with {@code {names}} of what they then share; empty where each is a matter of its own
 * @param remedies what usually helps, likewise with {@code {names}}; may be empty
 * @param page     the whole page, Markdown
 * @param drl      the DRL rules of the folder by unit, sorted; one of them bears the name
 */
public record RuleInfo(String name, String topic, Optional<Severity> severity, String law, String message,
                       Optional<String> alike, List<String> remedies, String page, Map<Unit, List<String>> drl) {
    /** A name to fill in, or {@code {name|manner}} for one of the ways in which a value may be written; the name is the first group, and the manner, where there is one, the second. */
    public static final Pattern PLACEHOLDER = Pattern.compile("\\{([A-Za-z][A-Za-z0-9_]*)(?:\\|(and|or|money))?\\}");

    public RuleInfo {
        remedies = List.copyOf(remedies);
        Map<Unit, List<String>> sorted = new EnumMap<>(Unit.class);
        drl.forEach((unit, rules) -> sorted.put(unit, rules.stream().sorted().toList()));
        drl = Collections.unmodifiableMap(sorted);
    }

    /** The DRL rules of this folder that run in a unit. */
    public List<String> drlRules(Unit unit) {
        return drl.getOrDefault(unit, List.of());
    }
}

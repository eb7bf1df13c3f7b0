package fettle.view;

import fettle.space.Exact;
import fettle.space.Fraction;
import java.math.BigDecimal;
import java.util.Collection;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/**
 * Fills a rule's text in from a finding's data. {@code {name}} stands for a value, a list being joined by "and"; {@code {name|or}} joins it
 * by "or". What a value says is never read as a template again.
 */
final class Template {

    private static final Pattern NAME = Pattern.compile("\\{([A-Za-z][A-Za-z0-9_]*)(?:\\|(and|or))?\\}");
    private static final Pattern HUMP = Pattern.compile("(?<=[a-z0-9])(?=[A-Z])");

    private Template() {}

    /** The text filled in; a name without a value is put in words, so that a sentence remains. */
    static String filled(String template, Map<String, ?> data) {
        return NAME.matcher(template).replaceAll(found -> java.util.regex.Matcher.quoteReplacement(
                value(found, data).orElseGet(() -> "some " + HUMP.matcher(found.group(1)).replaceAll(" ").toLowerCase(Locale.ROOT))));
    }

    /** The text filled in; empty where a name has no value. */
    static Optional<String> whole(String template, Map<String, ?> data) {
        boolean all = NAME.matcher(template).results().allMatch(found -> value(found, data).isPresent());
        return all ? Optional.of(filled(template, data)) : Optional.empty();
    }

    private static Optional<String> value(MatchResult found, Map<String, ?> data) {
        String last = found.group(2) == null ? "and" : found.group(2);
        return Optional.<Object>ofNullable(data.get(found.group(1))).map(value -> words(value, last)).filter(words -> !words.isEmpty());
    }

    /** A value in words. */
    static String words(Object value, String last) {
        if (value instanceof BigDecimal decimal) {
            return Exact.text(decimal);
        } else if (value instanceof Fraction fraction) {
            return Figures.of(fraction);
        } else if (value instanceof Collection<?> items) {
            return Phrases.joined(items.stream().map(item -> words(item, last)).toList(), last);
        } else if (value instanceof Map<?, ?> map) {
            return Phrases.joined(map.entrySet().stream().map(entry -> entry.getKey() + " " + words(entry.getValue(), last)).toList(), last);
        }
        return value.toString();
    }
}

package fettle.view;

import fettle.engine.RuleInfo;
import fettle.judgement.FitSets;
import fettle.judgement.SlotsOnPlatforms;
import fettle.space.Exact;
import fettle.space.Fraction;
import fettle.space.best.Mainstay;
import fettle.space.best.Turn;
import fettle.space.worth.Gain;
import java.math.BigDecimal;
import java.util.Collection;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Fills a rule's text in from a finding's data. {@code {name}} stands for a value, a list being joined by "and"; {@code {name|or}} joins it
 * by "or", and {@code {name|money}} writes an amount of the catalog's money. What stands between {@code [[} and {@code ]]} is left out where a name in it has no value. What
 * a value says is never read as a template again.
 *
 * @param currency the catalog's; empty where it has none
 */
record Template(String currency) {

    private static final Pattern SPARE = Pattern.compile("\\[\\[(.*?)\\]\\]");
    private static final Pattern HUMP = Pattern.compile("(?<=[a-z0-9])(?=[A-Z])");

    /** The text filled in; a name without a value is put in words, so that a sentence remains. */
    String filled(String template, Map<String, ?> data) {
        StringBuilder text = new StringBuilder();
        int done = 0;
        Matcher spare = SPARE.matcher(template);
        while (spare.find()) {
            text.append(plain(template.substring(done, spare.start()), data)).append(whole(spare.group(1), data).orElse(""));
            done = spare.end();
        }
        return text.append(plain(template.substring(done), data)).toString();
    }

    private String plain(String template, Map<String, ?> data) {
        return RuleInfo.PLACEHOLDER.matcher(template).replaceAll(found -> Matcher.quoteReplacement(
                value(found, data).orElseGet(() -> "some " + HUMP.matcher(found.group(1)).replaceAll(" ").toLowerCase(Locale.ROOT))));
    }

    /** The text filled in; empty where a name has no value that stands in none of the parts that may be left out. */
    Optional<String> whole(String template, Map<String, ?> data) {
        boolean all = RuleInfo.PLACEHOLDER.matcher(SPARE.matcher(template).replaceAll("")).results().allMatch(found -> value(found, data).isPresent());
        return all ? Optional.of(filled(template, data)) : Optional.empty();
    }

    private Optional<String> value(MatchResult found, Map<String, ?> data) {
        String manner = found.group(2) == null ? "and" : found.group(2);
        return Optional.<Object>ofNullable(data.get(found.group(1))).map(value -> words(value, manner)).filter(words -> !words.isEmpty());
    }

    private String words(Object value, String manner) {
        if (value instanceof BigDecimal decimal) {
            return manner.equals("money") ? Figures.withUnit(Figures.money(decimal), currency) : Exact.text(decimal);
        } else if (value instanceof Fraction fraction) {
            return Figures.of(fraction);
        } else if (value instanceof Gain gain) {
            return GainWording.of(gain);
        } else if (value instanceof Turn turn) {
            return TurnWording.of(turn);
        } else if (value instanceof Mainstay mainstay) {
            return TurnWording.of(mainstay);
        } else if (value instanceof SlotsOnPlatforms where) {
            return where.words();
        } else if (value instanceof FitSets fits) {
            return Phrases.apart(Phrases.each(fits.sets(), set -> Phrases.and(set.parts()) + " in " + Phrases.and(set.slots())));
        } else if (value instanceof Collection<?> items) {
            return Phrases.joined(items.stream().map(item -> words(item, manner)).toList(), manner);
        } else if (value instanceof Map<?, ?> map && map.values().stream().allMatch(Mainstay.class::isInstance)) {
            return words(map.values(), manner);
        } else if (value instanceof Map<?, ?> map) {
            return Phrases.joined(map.entrySet().stream().map(entry -> entry.getKey() + " " + words(entry.getValue(), manner)).toList(), manner);
        }
        return value.toString();
    }
}

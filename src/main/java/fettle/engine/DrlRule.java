package fettle.engine;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.drools.drl.ast.descr.AnnotationDescr;
import org.drools.drl.ast.descr.RuleDescr;

/**
 * One rule of a DRL file, with its annotations in plain words.
 *
 * <p>A declared rule.
 *
 * @param name        as written after {@code rule}
 * @param line        where it starts
 * @param annotations by name, without the quotes of the source
 */
record DrlRule(String name, int line, Map<String, String> annotations) {
    static DrlRule of(RuleDescr rule, String shown) {
        Map<String, String> annotations = new TreeMap<>();
        for (AnnotationDescr annotation : rule.getAnnotations()) {
            if (annotation.isDuplicated()) {
                throw new RuleErrors(new RuleProblem(shown, rule.getLine(), 0,
                        "The rule " + rule.getName() + " has @" + annotation.getName() + " twice; keep one."));
            }
            annotations.put(annotation.getName(), plain(String.valueOf(annotation.getSingleValue())));
        }
        return new DrlRule(rule.getName(), rule.getLine(), Map.copyOf(annotations));
    }

    Optional<String> annotation(String key) {
        return Optional.ofNullable(annotations.get(key)).filter(value -> !value.isBlank());
    }

    /** Annotations arrive as source text: takes the quotes off and resolves what they escape. */
    static String plain(String source) {
        String text = source.strip();
        boolean quoted = text.length() >= 2 && text.startsWith("\"") && text.endsWith("\"");
        return quoted ? text.substring(1, text.length() - 1).translateEscapes() : text;
    }
}

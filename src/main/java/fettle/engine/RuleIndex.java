package fettle.engine;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * The index of compiled rules: metadata, pages, and the names of all DRL rules.
 *
 * <p>What rules there are. The built-in index is written beside the compiled rules and read once.
 */
public final class RuleIndex {
    /** Where the index lies on the class path, and in the cache. */
    static final String RESOURCE = "fettle/rules/index.json";

    private final String digest;
    private final Map<Unit, List<String>> models;
    private final List<RuleInfo> rules;
    private final Map<String, RuleInfo> byName = new HashMap<>();
    private final Map<String, RuleInfo> byDrlRule = new HashMap<>();

    RuleIndex(String digest, Map<Unit, List<String>> models, List<RuleInfo> rules) {
        this.digest = digest;
        Map<Unit, List<String>> ordered = new EnumMap<>(Unit.class);
        models.forEach((unit, names) -> ordered.put(unit, List.copyOf(names)));
        this.models = Collections.unmodifiableMap(ordered);
        this.rules = List.copyOf(rules);
        for (RuleInfo rule : this.rules) {
            byName.put(rule.name(), rule);
            rule.drl().values().forEach(names -> names.forEach(name -> byDrlRule.put(name, rule)));
        }
    }

    /** The rules that the program was built with; throws {@link RulesUnfit} where it was built without. */
    public static RuleIndex builtIn() {
        return BuiltIn.get();
    }

    /** All rules, sorted by name. */
    public List<RuleInfo> rules() {
        return rules;
    }

    /** The rule of this name. */
    public Optional<RuleInfo> find(String name) {
        return Optional.ofNullable(byName.get(name));
    }

    /** The rule to whose folder a DRL rule belongs; a folder may hold more DRL rules than the one of its own name. */
    public Optional<RuleInfo> owner(String drlRule) {
        return Optional.ofNullable(byDrlRule.get(drlRule));
    }

    /** The names of all DRL rules that run in a unit. */
    public SortedSet<String> drlRules(Unit unit) {
        SortedSet<String> names = new TreeSet<>();
        rules.forEach(rule -> names.addAll(rule.drlRules(unit)));
        return Collections.unmodifiableSortedSet(names);
    }

    /** Changes whenever a rule, a page or the program does. */
    public String digest() {
        return digest;
    }

    Map<Unit, List<String>> models() {
        return models;
    }

    /** One index over several; the parts keep their models to themselves. */
    static RuleIndex merged(List<RuleIndex> parts) {
        if (parts.size() == 1) {
            return parts.get(0);
        }
        Digest sum = new Digest();
        List<RuleInfo> all = new ArrayList<>();
        for (RuleIndex part : parts) {
            sum.add("part", part.digest);
            all.addAll(part.rules);
        }
        all.sort(Comparator.comparing(RuleInfo::name));
        return new RuleIndex(sum.hex(), Map.of(), all);
    }

    /** Read on first use, and only then; where that fails, whoever asks next is told as well. */
    private static final class BuiltIn {
        private static Optional<RuleIndex> index = Optional.empty();

        static synchronized RuleIndex get() {
            if (index.isEmpty()) {
                index = Optional.of(load());
            }
            return index.get();
        }

        private static RuleIndex load() {
            try (InputStream in = RuleIndex.class.getClassLoader().getResourceAsStream(RESOURCE)) {
                if (in == null) {
                    throw new RulesUnfit("The program was packaged without its rules: " + RESOURCE + " is missing.");
                }
                return RuleIndexFormat.read(in);
            } catch (IOException broken) {
                throw new RulesUnfit("The index of rules cannot be read: " + broken.getMessage(), broken);
            }
        }
    }
}

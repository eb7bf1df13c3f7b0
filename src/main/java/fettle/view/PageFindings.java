package fettle.view;

import fettle.catalog.Catalog;
import fettle.engine.RuleIndex;
import fettle.judgement.BuildReview;
import fettle.judgement.Finding;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * Writes findings for a report page, each with the parts and platforms that it speaks of, by their numbers in the page's lists of parts and, after
 * those, platforms.
 */
final class PageFindings {

    private final Wording wording;
    private final RuleIndex rules;
    private final Catalog catalog;
    private final Map<Finding, String> platforms = new HashMap<>();
    private final Map<String, Integer> numbers = new HashMap<>();

    PageFindings(Wording wording, RuleIndex rules, Catalog catalog, List<BuildReview> builds) {
        this.wording = wording;
        this.rules = rules;
        this.catalog = catalog;
        Stream.concat(catalog.parts().keySet().stream(), catalog.platforms().keySet().stream()).forEach(host -> numbers.put(host, numbers.size()));
        builds.forEach(build -> build.findings().forEach(finding -> platforms.put(finding, build.result().build().platform().id())));
    }

    void write(PageJson page, List<Finding> findings) {
        page.list("rules", new TreeSet<>(findings.stream().map(Finding::rule).toList()), rule -> page.object(() -> {
            page.text("id", rule);
            page.text("law", rules.find(rule).map(found -> found.law()).orElse(""));
        }));
        page.list("findings", findings, finding -> page.object(() -> finding(page, finding)));
    }

    private void finding(PageJson page, Finding finding) {
        page.text("rule", finding.rule());
        page.text("severity", finding.severity().word());
        page.text("subject", finding.subject());
        page.text("message", wording.message(finding));
        page.list("where", finding.where(), origin -> page.row(() -> page.place(origin)));
        page.list("because", Reasoning.of(wording.reasons(finding)), told -> page.row(() -> {
            page.text(told.fact());
            told.where().ifPresent(page::place);
        }));
        page.texts("remedies", wording.remedies(finding));
        page.text("waived", finding.waived());
        String host = host(finding.subject());
        page.text("platform", platforms.getOrDefault(finding, catalog.platforms().containsKey(host) ? host : ""));
        TreeSet<String> names = new TreeSet<>();
        gather(host, names);
        finding.data().values().forEach(value -> gather(value, names));
        page.list("names", names, name -> page.json().writeNumber(numbers.get(name)));
    }

    /** The part or platform in {@code part:x}, {@code slot:x/slot}, {@code offer:x@vendor}. */
    private static String host(String subject) {
        return subject.substring(subject.indexOf(':') + 1).replaceFirst("[/@].*", "");
    }

    private void gather(Object value, TreeSet<String> names) {
        if (value instanceof String text && catalog.host(text).isPresent()) {
            names.add(text);
        } else if (value instanceof Collection<?> items) {
            items.forEach(item -> gather(item, names));
        } else if (value instanceof Map<?, ?> map) {
            map.keySet().forEach(key -> gather(key, names));
            map.values().forEach(held -> gather(held, names));
        }
    }
}

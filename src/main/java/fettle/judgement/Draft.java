package fettle.judgement;

import fettle.catalog.Fact;
import fettle.document.Origin;
import fettle.engine.Severity;
import fettle.space.Computed;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/** A finding in the making: a rule adds places, values and reasons to it in one chain of calls. */
public final class Draft {

    private final String rule;
    private final String subject;
    private Severity severity;
    private final Set<Origin> where = new LinkedHashSet<>();
    private final List<Reason> because = new ArrayList<>();
    private final SortedMap<String, Object> data = new TreeMap<>();

    Draft(String rule, String subject, Severity severity) {
        this.rule = rule;
        this.subject = subject;
        this.severity = severity;
    }

    /** Another severity than the rule's usual one. */
    public Draft severity(String word) {
        severity = Severity.ofWord(word).orElseThrow(() -> new IllegalArgumentException("no such severity: " + word));
        return this;
    }

    /** A place to look at; the one to mend comes first. */
    public Draft at(Origin origin) {
        where.add(origin);
        return this;
    }

    /** A value that the message, the remedies and JSON can name. An empty optional is left out. */
    public Draft with(String name, Object value) {
        Object held = value instanceof Optional<?> optional ? optional.orElse(null) : value;
        if (held != null) {
            data.put(name, held);
        }
        return this;
    }

    /** A catalog or build entry that caused it. */
    public Draft because(Fact fact) {
        because.add(new Reason.Stated(fact));
        return this;
    }

    /** Catalog or build entries that caused it. */
    public Draft because(Iterable<? extends Fact> facts) {
        facts.forEach(this::because);
        return this;
    }

    /** A computed result that caused it. */
    public Draft because(Computed result) {
        because.add(new Reason.Derived(result));
        return this;
    }

    Finding finish() {
        List<Origin> places = new ArrayList<>(where);
        if (places.isEmpty()) {
            because.stream().flatMap(reason -> reason.origin().stream()).findFirst().ifPresent(places::add);
        }
        return new Finding(rule, severity, subject, places, because, data, Optional.empty());
    }
}

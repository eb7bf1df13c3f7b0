package fettle.judgement;

import fettle.catalog.Fact;
import fettle.document.Origin;
import fettle.document.Places;
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
    private final Places places;
    private Severity severity;
    private final Set<Origin> where = new LinkedHashSet<>();
    private final List<Reason> because = new ArrayList<>();
    private final SortedMap<String, Object> data = new TreeMap<>();

    Draft(String rule, String subject, Severity severity, Places places) {
        this.rule = rule;
        this.subject = subject;
        this.places = places;
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

    /** The place of a property of an entry, its steps joined by {@code /}; of the entry itself where it has none such. */
    public Draft at(Fact entry, String steps) {
        return at(places.inside(entry.origin(), steps));
    }

    /** Places to look at. */
    public Draft at(Iterable<Origin> origins) {
        origins.forEach(this::at);
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

    /** Computed results that caused it. */
    public Draft becauseOf(Iterable<? extends Computed> results) {
        results.forEach(this::because);
        return this;
    }

    Finding finish() {
        List<Origin> places = new ArrayList<>();
        // An object begins where its first property does.
        where.stream().filter(origin -> places.stream().noneMatch(origin::coincides)).forEach(places::add);
        if (places.isEmpty()) {
            because.stream().flatMap(reason -> reason.origin().stream()).findFirst().ifPresent(places::add);
        }
        return new Finding(rule, severity, subject, places, because, data, Optional.empty());
    }
}

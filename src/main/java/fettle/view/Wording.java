package fettle.view;

import fettle.catalog.Catalog;
import fettle.catalog.CatalogHead;
import fettle.catalog.Fact;
import fettle.engine.RuleIndex;
import fettle.engine.RuleInfo;
import fettle.judgement.Finding;
import fettle.judgement.Reason;
import fettle.space.BetweenRungs;
import fettle.space.Cause;
import fettle.space.Chain;
import fettle.space.Chains;
import fettle.space.Change;
import fettle.space.Computed;
import fettle.space.FormerName;
import fettle.space.Unresolved;
import fettle.space.Violation;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Puts findings, facts and results into words. All prose about them is made here and in {@link FactWording}, for every kind of output alike. */
public final class Wording {

    private final RuleIndex rules;
    private final FactWording facts;
    private final Template template;

    public Wording(RuleIndex rules, Catalog catalog) {
        this.rules = rules;
        this.facts = new FactWording(catalog);
        this.template = new Template(catalog.head().map(CatalogHead::currency).orElse(""));
    }

    /** What is wrong: one sentence, without a full stop. */
    public String message(Finding finding) {
        return message(finding.rule(), finding.data());
    }

    private String message(String rule, Map<String, Object> data) {
        return template.filled(rules.find(rule).map(RuleInfo::message).orElse(rule), data);
    }

    /** What to do, most usual first; a remedy that speaks of something that the finding doesn't have is left out. */
    public List<String> remedies(Finding finding) {
        return rules.find(finding.rule()).map(RuleInfo::remedies).orElse(List.of()).stream()
                .flatMap(remedy -> template.whole(remedy, finding.data()).stream())
                .toList();
    }

    /** In words that follow a number, what findings are that have the same cause as this one; empty where each is a matter of its own. */
    Optional<String> alike(Finding finding) {
        return rules.find(finding.rule()).flatMap(RuleInfo::alike).flatMap(words -> template.whole(words, finding.data()));
    }

    /** The value that a finding is about, in words; empty where it is about none. */
    Optional<String> value(Finding finding) {
        return template.whole("{value}", finding.data());
    }

    /** The law that a rule keeps; the rule's name where it is unknown. */
    public String law(String rule) {
        return rules.find(rule).map(RuleInfo::law).orElse(rule);
    }

    /** What a document states: one sentence, without a full stop. */
    public String fact(Fact fact) {
        return facts.of(fact);
    }

    /** What was computed: one sentence, without a full stop. */
    public String result(Computed result) {
        if (result instanceof Violation violation) {
            return message(violation.rule(), violation.data());
        } else if (result instanceof Chain chain) {
            return chain(chain.links());
        } else if (result instanceof Change change) {
            return ChangeWording.sentence(change);
        } else if (result instanceof Cause cause) {
            return CauseWording.sentence(cause);
        } else if (result instanceof BetweenRungs between) {
            return RungWording.sentence(between);
        } else if (result instanceof FormerName name) {
            return name.written() + " is probably what was " + name.former() + " before, and is compared with that";
        } else if (result instanceof Unresolved lost) {
            return FactWording.what(lost.entry()) + " at " + lost.entry().path() + " cannot be placed: " + lost.problem();
        }
        throw new IllegalStateException("no words for " + result.getClass().getSimpleName());
    }

    /** How a chain of adapters leads from a slot to a part. */
    static String chain(List<Chains.Link> links) {
        Chains.Link first = links.get(0);
        if (links.size() == 1) {
            return first.part() + " fits " + first.slot();
        }
        String rest = links.subList(1, links.size()).stream().map(link -> link.part() + " in " + link.slot()).collect(Collectors.joining(", and that "));
        return first.part() + " in " + first.slot() + " would carry " + rest;
    }

    /** The reasons of a finding in words as a list: what another follows from comes before it, and each is told once. */
    public List<Told> reasoning(Finding finding) {
        return Reasoning.of(reasons(finding));
    }

    /** The reasons of a finding in words, each said once at one level. */
    List<Told> reasons(Finding finding) {
        return finding.because().stream().map(this::told).distinct().toList();
    }

    private Told told(Reason reason) {
        return reason instanceof Reason.Stated stated ? told(stated.fact()) : told(((Reason.Derived) reason).result());
    }

    Told told(Computed result) {
        List<Told> premises = List.of();
        if (result instanceof Violation violation) {
            premises = violation.because().stream().map(this::told).distinct().toList();
        } else if (result instanceof Cause cause) {
            premises = cause.because().stream().map(this::told).distinct().toList();
        }
        return new Told(result(result), result.origin(), premises);
    }

    private Told told(Fact fact) {
        return new Told(fact(fact), Optional.of(fact.origin()), List.of());
    }
}

package fettle.judgement;

import fettle.catalog.BlocksTag;
import fettle.catalog.Catalog;
import fettle.catalog.ClaimsZone;
import fettle.catalog.Constraint;
import fettle.catalog.DeclaresTrait;
import fettle.catalog.Excludes;
import fettle.catalog.Fact;
import fettle.space.IdleRelation;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Finds the entries behind relations that rule nothing out. */
final class IdleRules {

    private static final String NEVER_MET = "no platform leads to all that it names";

    private final Catalog catalog;

    IdleRules(Catalog catalog) {
        this.catalog = catalog;
    }

    /** Whether something in a scope may be behind a relation. What rules nothing out is found one after the other, so that all relations or none are looked at. */
    boolean mayConcern(Scope scope) {
        return Stream.of("constraint", "zone", "trait").anyMatch(scope::takesAny)
                || Stream.of(catalog.parts(), catalog.platforms()).flatMap(hosts -> hosts.values().stream())
                        .anyMatch(host -> !(host.excludes().isEmpty() && host.blocks().isEmpty()) && scope.takes(host.subject()));
    }

    /** What is behind these relations. */
    List<IdleRule> of(Collection<IdleRelation> relations) {
        // Nothing is behind what has no entry of its own, such as a rule that somebody added.
        return relations.stream().filter(relation -> !relation.because().isEmpty())
                .flatMap(relation -> relation.stated() instanceof Constraint ? constraints(relation) : rule(relation).stream()).toList();
    }

    /** Each has an entry of its own, even where several say the same. */
    private static Stream<IdleRule> constraints(IdleRelation relation) {
        return relation.because().stream().filter(Constraint.class::isInstance).map(Constraint.class::cast)
                .map(each -> new IdleRule("constraint:" + each.id(), each.origin(), "constraint", each.id(), why(relation, NEVER_MET), because(relation)));
    }

    private Optional<IdleRule> rule(IdleRelation relation) {
        if (relation.stated() instanceof Excludes excludes) {
            return of(relation, excludes.part(), "exclusion", excludes.name());
        } else if (relation.stated() instanceof BlocksTag blocks) {
            return of(relation, blocks.part(), "block", blocks.tag());
        } else if (relation.stated() instanceof ClaimsZone claim) {
            return declared(relation, "zone", claim.zone(), "no platform leads to two parts that take it");
        } else if (relation.stated() instanceof DeclaresTrait declares) {
            return declared(relation, "trait", declares.trait(), "on every platform some value suits all that declare it");
        }
        return Optional.empty();
    }

    private Optional<IdleRule> of(IdleRelation relation, String part, String sort, String name) {
        return catalog.host(part).map(host -> new IdleRule(host.subject(), relation.stated().origin(), sort, name, why(relation, NEVER_MET), relation.because()));
    }

    private Optional<IdleRule> declared(IdleRelation relation, String sort, String name, String apart) {
        return catalog.entries().stream().filter(entry -> entry.subject().equals(sort + ":" + name)).findFirst()
                .map(entry -> new IdleRule(entry.subject(), entry.origin(), sort, name, why(relation, apart), relation.because()));
    }

    private static String why(IdleRelation relation, String apart) {
        return relation.alike().map(alike -> "it says no more than the " + named(alike))
                .orElse(relation.apart() ? apart : "whatever would break it is ruled out without it");
    }

    private static String named(Fact alike) {
        return alike instanceof Constraint constraint ? "constraint " + constraint.id() : alike instanceof ClaimsZone claim ? "zone " + claim.zone() : "other one";
    }

    /** What states it; where it says no more than another constraint, what states that one too. */
    private static List<Fact> because(IdleRelation relation) {
        return relation.alike().filter(Constraint.class::isInstance).map(alike -> List.<Fact>of(alike, relation.stated())).orElse(relation.because());
    }
}

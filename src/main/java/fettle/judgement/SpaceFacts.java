package fettle.judgement;

import fettle.catalog.Catalog;
import fettle.catalog.Limit;
import fettle.catalog.Part;
import fettle.relation.Relations;
import fettle.space.IdleRelation;
import fettle.space.LimitVerdict;
import fettle.space.Sounding;
import fettle.space.Space;
import fettle.space.Vitals;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/** Lays out what holds of all valid builds of a catalog's platforms as the facts that judgement rules match. */
final class SpaceFacts {

    private SpaceFacts() {}

    /** What bears on a scope, and whatever else is found on the way. */
    static List<Object> of(Relations relations, Space space, Sounding sounding, Scope scope) {
        Catalog catalog = relations.catalog();
        Collection<Vitals> platforms = sounding.vitals().values();
        Explaining explaining = new Explaining(space, catalog, scope);
        Dead dead = new Dead(relations, platforms, explaining);
        IdleRules idle = new IdleRules(catalog);
        List<Object> facts = new ArrayList<>();
        platforms.stream().filter(Vitals::empty).forEach(vitals -> {
            Part platform = catalog.platforms().get(vitals.platform());
            facts.add(new VoidPlatform(platform, explaining.platform(platform.id(), platform.subject())));
        });
        facts.addAll(dead.parts());
        facts.addAll(dead.slots());
        List<LimitVerdict> limits = scope.takesAny("limit") ? sounding.limits() : List.of();
        facts.addAll(limits);
        boolean rules = idle.mayConcern(scope);
        facts.addAll(idle.of(rules ? sounding.idle() : List.of()));
        facts.addAll(open(catalog, platforms, limits, rules ? sounding.idleOrNot() : List.of(), idle));
        return facts;
    }

    private static List<LeftOpen> open(
            Catalog catalog, Collection<Vitals> platforms, List<LimitVerdict> limits, List<IdleRelation> idleOrNot, IdleRules idle) {
        List<LeftOpen> open = new ArrayList<>();
        for (Vitals vitals : platforms) {
            Part platform = catalog.platforms().get(vitals.platform());
            vitals.undecided().ifPresent(undecided ->
                    open.add(new LeftOpen(platform.subject(), platform.origin(), "some valid build holds", List.copyOf(vitals.open()), undecided)));
        }
        for (LimitVerdict verdict : limits) {
            Limit limit = verdict.limit();
            verdict.undecided().ifPresent(undecided ->
                    open.add(new LeftOpen("limit:" + limit.id(), limit.origin(), "some valid builds keep, and others break,", List.of(limit.id()), undecided)));
        }
        for (IdleRelation relation : idleOrNot) {
            idle.of(List.of(relation)).forEach(rule ->
                    open.add(new LeftOpen(rule.subject(), rule.origin(), "something is ruled out by the", List.of(rule.what()), relation.undecided().orElseThrow())));
        }
        return open;
    }
}

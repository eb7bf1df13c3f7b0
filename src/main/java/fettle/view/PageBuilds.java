package fettle.view;

import fettle.catalog.Attribute;
import fettle.catalog.Build;
import fettle.catalog.Catalog;
import fettle.catalog.Outfit;
import fettle.catalog.Slot;
import fettle.judgement.BuildReview;
import fettle.judgement.Finding;
import fettle.relation.Relations;
import fettle.space.BuildCheck;
import fettle.space.BuildResult;
import fettle.space.Footing;
import fettle.space.LimitMargin;
import fettle.space.Occurrence;
import fettle.space.Placement;
import fettle.space.SlotUse;
import fettle.space.Worn;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Writes builds for a report page: what sits where, the totals before and after, and the margins with each outfit. */
final class PageBuilds {

    private final Wording wording;
    private final Relations relations;
    private final Catalog catalog;
    private final PageHosts hosts;
    private final BuildCheck check;
    private final LimitWording limits;

    PageBuilds(Wording wording, Relations relations, PageHosts hosts) {
        this.wording = wording;
        this.relations = relations;
        this.catalog = relations.catalog();
        this.hosts = hosts;
        this.check = new BuildCheck(relations);
        this.limits = new LimitWording(catalog);
    }

    void write(PageJson page, List<BuildReview> builds, Map<Finding, Integer> places) {
        page.list("builds", builds, build -> page.object(() -> build(page, build, places)));
    }

    private void build(PageJson page, BuildReview review, Map<Finding, Integer> places) {
        BuildResult result = review.result();
        Build build = result.build();
        page.text("id", build.id());
        page.text("label", build.label());
        page.json().writeArrayPropertyStart("where");
        page.place(build.origin());
        page.json().writeEndArray();
        page.text("platform", build.platform().id());
        page.json().writeBooleanProperty("valid", result.valid());
        page.text("says", "On " + BuildText.on(catalog, build));
        page.text("cost", BuildText.cost(catalog, result));
        page.list("findings", review.findings().stream().map(places::get).sorted().distinct().toList(), page.json()::writeNumber);
        page.texts("lost", result.placement().map(Placement::unresolved).orElse(List.of()).stream().map(wording::result).toList());
        page.json().writeArrayPropertyStart("tree");
        result.placement().ifPresent(placement -> slots(page, build, placement, Placement.PLATFORM));
        page.json().writeEndArray();
        totals(page, result);
        limits(page, result);
    }

    /** The slots of one placed part, or of the platform; a slot of several parts is told once for each. */
    private void slots(PageJson page, Build build, Placement placement, int owner) {
        for (SlotUse use : placement.slots()) {
            if (use.owner() == owner && use.occupants().isEmpty()) {
                page.object(() -> {
                    page.text("slot", slotLabel(use));
                    page.text("part", Optional.empty());
                    page.list("slots", List.of(), unused -> { });
                });
            } else if (use.owner() == owner) {
                use.occupants().forEach(occupant -> occupied(page, build, placement, use, placement.parts().get(occupant)));
            }
        }
    }

    private void occupied(PageJson page, Build build, Placement placement, SlotUse use, Occurrence part) {
        page.object(() -> {
            page.text("slot", slotLabel(use) + (part.at().isPresent() ? ", from notch " + part.at().getAsInt() : ""));
            page.text("part", part.part());
            page.text("price", price(build, part.part()));
            page.json().writeArrayPropertyStart("slots");
            slots(page, build, placement, part.index());
            page.json().writeEndArray();
        });
    }

    private String slotLabel(SlotUse use) {
        return relations.slot(use.slot()).map(Slot::label).orElse(use.slot().slot());
    }

    private String price(Build build, String part) {
        if (build.owned().stream().anyMatch(owned -> owned.id().equals(part))) {
            return "owned";
        }
        return check.prices(build).map(open -> open.cheapest(part).map(priced -> hosts.money(priced.cost()) + " at " + priced.offer().place()).orElse("no open offer"))
                .orElse("price not known");
    }

    private void totals(PageJson page, BuildResult result) {
        Optional<Footing> footing = Footing.of(relations, result);
        page.text("against", footing.map(Footing::factory).orElse(false) ? "against what the platform comes with" : "against the bare platform");
        page.list("totals", result.totals().entrySet(), total -> page.row(() -> {
            Attribute attribute = catalog.attributes().get(total.getKey());
            Optional<BigDecimal> before = footing.flatMap(found -> Optional.ofNullable(found.totals().get(total.getKey())));
            Optional<BigDecimal> change = before.map(total.getValue()::subtract);
            page.text(attribute.label());
            page.text(before.map(value -> shown(attribute, value)).orElse("none"));
            page.text(shown(attribute, total.getValue()));
            page.text(change.map(value -> (value.signum() > 0 ? "+" : "") + shown(attribute, value)).orElse(""));
            page.text(standing(attribute, change));
        }));
    }

    private static String shown(Attribute attribute, BigDecimal value) {
        return Figures.withUnit(Figures.rounded(value, attribute.shown()), Optional.of(attribute));
    }

    private static String standing(Attribute attribute, Optional<BigDecimal> change) {
        int sign = change.map(BigDecimal::signum).orElse(0);
        if (change.isEmpty() || attribute.better() == Attribute.Better.NONE && sign != 0) {
            return "other";
        } else if (sign == 0) {
            return "same";
        }
        return sign > 0 == (attribute.better() == Attribute.Better.HIGHER) ? "better" : "worse";
    }

    private void limits(PageJson page, BuildResult result) {
        List<Worn> worn = Worn.of(relations, result);
        String own = result.build().outfit().map(Build.Located::id).orElse("");
        page.json().writeArrayPropertyStart("limits");
        for (int i = 0; i < result.limits().size(); i++) {
            int at = i;
            page.object(() -> {
                page.text("label", result.limits().get(at).limit().label());
                page.text("says", wording.fact(result.limits().get(at).limit()));
                page.list("worn", worn, each -> page.object(() -> worn(page, each.outfit(), each.limits().get(at), own)));
            });
        }
        page.json().writeEndArray();
    }

    private void worn(PageJson page, Optional<Outfit> outfit, LimitMargin margin, String own) {
        page.text("outfit", outfit.map(Outfit::label).orElse("nothing worn"));
        page.json().writeBooleanProperty("own", outfit.map(Outfit::id).orElse("").equals(own));
        page.text("value", limits.value(margin));
        page.text("bound", limits.bound(margin));
        page.text("margin", limits.margin(margin));
        page.json().writeBooleanProperty("told", margin.told());
        page.json().writeBooleanProperty("holds", margin.holds());
        page.json().writeBooleanProperty("close", margin.close());
    }
}

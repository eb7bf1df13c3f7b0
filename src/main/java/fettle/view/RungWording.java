package fettle.view;

import fettle.judgement.SlotsOnPlatforms;
import fettle.space.Assembly;
import fettle.space.BetweenRungs;
import fettle.space.Exact;
import java.util.Collections;

/** Puts into one sentence what lies between two rungs, and how much dearer a point is that way. */
final class RungWording {

    private RungWording() {}

    /** One sentence, without a full stop. */
    static String sentence(BetweenRungs between) {
        return "for " + between.lens() + ", in " + SlotsOnPlatforms.of(between).words() + ", " + offer(between.shown()) + ": above "
                + offer(between.lower()) + " a point comes at " + Figures.of(between.stepTo()) + " that way, and at " + Figures.of(between.stepPast()) + " on the way to "
                + offer(between.upper());
    }

    private static String offer(BetweenRungs.Offer offer) {
        return ImprovementWording.assembly(offer.assembly().map(Assembly::paths).orElseGet(Collections::emptySortedMap)) + " (cost " + Figures.money(offer.cost()) + ", benefit " + Exact.text(offer.benefit()) + ")";
    }
}

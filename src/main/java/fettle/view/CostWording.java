package fettle.view;

import fettle.catalog.Build;
import fettle.catalog.Catalog;
import fettle.catalog.Part;
import fettle.space.BuildResult;

/** Says why a build has no cost. */
final class CostWording {

    private CostWording() {}

    /** Such as {@code not to be had whole: no open offer for x}, or {@code not known} and why. */
    static String none(Catalog catalog, BuildResult result) {
        if (!result.unobtainable().isEmpty()) {
            return "not to be had whole: no open offer for " + Phrases.and(Phrases.each(result.unobtainable(), Part::id));
        }
        return "not known, since " + result.build().access().map(Build.Located::id).filter(id -> !catalog.access().containsKey(id))
                .map(id -> "the catalog has no access profile " + id).orElseGet(() -> result.resolved() && !result.unpriced().isEmpty()
                        ? "the catalog doesn't say what the price of " + Phrases.and(Phrases.each(result.unpriced(), Part::id)) + " is worth" : "not every part of the build could be placed");
    }

    /** The same in short, without the parts that can't be had. */
    static String brief(Catalog catalog, BuildResult result) {
        return result.unobtainable().isEmpty() ? none(catalog, result) : "not to be had";
    }
}

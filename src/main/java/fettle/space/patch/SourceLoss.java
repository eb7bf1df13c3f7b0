package fettle.space.patch;

import fettle.catalog.Offer;
import fettle.document.Origin;
import fettle.space.Change;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A part that could be bought before a patch and cannot after it, by somebody or by anybody.
 *
 * @param part its id now
 * @param formerly its id before, which is another where it was probably renamed
 * @param whole whether nothing sells it any more; otherwise only the access profiles named lost it
 * @param profiles the access profiles, known to both catalogs, that could buy it and no longer can
 * @param offers what could be bought before, by anybody or by those profiles, cheapest first
 * @param causes the differences in its offers and in those who sell
 * @param misnamed what the new catalog still offers by its old id, which nothing has there
 */
public record SourceLoss(String part, String formerly, boolean whole, List<String> profiles, List<Offer> offers, List<Change> causes, List<Offer> misnamed) {

    public SourceLoss {
        profiles = List.copyOf(profiles);
        offers = List.copyOf(offers);
        causes = List.copyOf(causes);
        misnamed = List.copyOf(misnamed);
    }

    /** Where its old id is still written in offers; empty where it is in none. */
    public Optional<List<String>> mends() {
        return Optional.of(misnamed.stream().map(offer -> offer.origin().file() + ":" + offer.origin().line()).toList()).filter(places -> !places.isEmpty());
    }

    /** Its id, where nothing offers it by the old one either. */
    public Optional<String> unoffered() {
        return Optional.of(part).filter(unused -> misnamed.isEmpty());
    }

    /** What could be bought before, without the offers that a cause tells to be gone. */
    public List<Offer> untold() {
        Set<Origin> told = causes.stream().filter(Change::removed).flatMap(change -> change.before().stream()).collect(Collectors.toSet());
        return offers.stream().filter(offer -> !told.contains(offer.origin())).toList();
    }

    /** Those who sold it before, in order. */
    public List<String> vendors() {
        return offers.stream().map(Offer::vendor).distinct().sorted().toList();
    }
}

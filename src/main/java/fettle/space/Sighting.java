package fettle.space;

import fettle.catalog.Catalog;
import fettle.catalog.CatalogHead;
import fettle.catalog.Offer;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * When an offer was last seen.
 *
 * @param daysBefore by how many days that was before the patch came out; 0 or less where it wasn't
 */
public record Sighting(Offer offer, String seen, CatalogHead head, long daysBefore) {

    /** The sightings of all offers that state one, where the catalog says when its patch came out. */
    static List<Sighting> of(Catalog catalog) {
        List<Sighting> sightings = new ArrayList<>();
        catalog.head().ifPresent(head -> day(head.released()).ifPresent(released -> catalog.offers().forEach(offer -> offer.seen().ifPresent(seen ->
                day(seen).ifPresent(day -> sightings.add(new Sighting(offer, seen, head, ChronoUnit.DAYS.between(day, released))))))));
        return sightings;
    }

    /** Empty for what is no date; the schema check reports it. */
    private static Optional<LocalDate> day(String iso) {
        try {
            return Optional.of(LocalDate.parse(iso));
        } catch (DateTimeParseException notADate) {
            return Optional.empty();
        }
    }
}

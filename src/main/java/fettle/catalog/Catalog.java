package fettle.catalog;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * All entries of a catalog directory, merged. Of entries that share an id, the one that stands first (by file, then place) is kept here;
 * {@link #entries()} lists them all. Maps iterate in order of their ids.
 */
public record Catalog(
        Optional<CatalogHead> head,
        List<CatalogHead> heads,
        Map<String, Attribute> attributes,
        Map<String, String> mounts,
        Map<String, Kind> kinds,
        Map<String, String> zones,
        Map<String, String> traits,
        Map<String, Part> platforms,
        Map<String, Part> parts,
        Map<String, Constraint> constraints,
        Map<String, Currency> currencies,
        Map<String, Vendor> vendors,
        Map<String, Good> goods,
        List<Offer> offers,
        Map<String, Access> access,
        Map<String, Outfit> outfits,
        Map<String, Limit> limits,
        Map<String, Lens> lenses,
        List<Waiver> waivers,
        List<Entry> entries,
        List<Reference> references) {

    /** A kind of part; parts of a role kind serve a purpose that stats don't show. */
    public record Kind(String id, String label, boolean role) {}

    /** The role kind of a part; empty where its kind is no role, or is unknown. */
    public Optional<String> roleOf(Part part) {
        return part.kind().filter(kind -> kinds.containsKey(kind) && kinds.get(kind).role());
    }

    /** The part or platform of that id. */
    public Optional<Part> host(String id) {
        Part part = parts.get(id);
        return Optional.ofNullable(part != null ? part : platforms.get(id));
    }
}

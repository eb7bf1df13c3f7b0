package fettle.judgement;

import fettle.catalog.Catalog;
import fettle.catalog.Entry;
import fettle.catalog.Lens;
import fettle.catalog.Part;
import fettle.catalog.Reference;
import fettle.document.DocumentProblem;
import fettle.document.DocumentSet;
import fettle.document.Origin;
import fettle.document.SchemaProblem;
import fettle.space.Assembly;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Where the catalog states something that could not be read, or is of nothing that the catalog has, and that decides about parts.
 *
 * @param parts the ids of those of which it is stated, or of which an offer states it: without it nothing can be said of what they are worth; all, where it says how any two compare
 * @param lenses the ids of those in which something is so
 * @param files the documents that hold such
 */
public record HalfRead(Set<String> parts, Set<String> lenses, Set<String> files) {

    static final HalfRead NONE = new HalfRead(Set.of(), Set.of(), Set.of());

    private static final Set<String> WORDS = Set.of("label", "note");
    /** What an attribute says of how any two parts compare. */
    private static final Set<String> COMPARING = Set.of("better", "combine");
    private static final Set<String> DECIDING = Set.of("parts", "platforms", "offers", "constraints", "attributes", "kinds", "goods", "currencies", "lenses");

    public HalfRead {
        parts = Set.copyOf(parts);
        lenses = Set.copyOf(lenses);
        files = Set.copyOf(files);
    }

    /** Where an entry begins: nothing is in two places. */
    private record Place(String file, String pointer) {}

    static HalfRead of(DocumentSet documents, List<SchemaProblem> schemaProblems, Catalog catalog) {
        Stream<Origin> unread = Stream.concat(schemaProblems.stream().map(SchemaProblem::origin), documents.problems().map(DocumentProblem::origin));
        Stream<Origin> ofNothing = catalog.references().stream().filter(mention -> ofNothing(mention, catalog)).map(Reference::origin);
        Set<Place> flawed = Stream.concat(unread, ofNothing).flatMap(origin -> entry(origin).stream()).collect(Collectors.toSet());
        if (flawed.isEmpty()) {
            return NONE;
        }
        Set<String> parts = new HashSet<>();
        boolean common = schemaProblems.stream().anyMatch(HalfRead::comparing);
        Set<String> kinds = catalog.entries().stream().filter(entry -> entry.section().equals("kinds") && in(flawed, entry.origin())).map(Entry::id).collect(Collectors.toSet());
        catalog.parts().values().stream().filter(part -> common || in(flawed, part.origin()) || part.kind().filter(kinds::contains).isPresent()).map(Part::id).forEach(parts::add);
        // An offer of which too little could be read is none, but names its part all the same.
        catalog.references().stream().filter(mention -> mention.origin().pointer().startsWith("/offers/") && mention.space().equals("parts") && in(flawed, mention.origin()))
                .map(Reference::id).forEach(parts::add);
        Set<String> lenses = catalog.lenses().values().stream().filter(lens -> in(flawed, lens.origin())).map(Lens::id).collect(Collectors.toSet());
        return new HalfRead(parts, lenses, flawed.stream().map(Place::file).collect(Collectors.toSet()));
    }

    /** Whether a figure, a purpose or a price is stated in terms of something that the catalog has not. */
    private static boolean ofNothing(Reference mention, Catalog catalog) {
        return switch (mention.space()) {
            case "attributes" -> !catalog.attributes().containsKey(mention.id());
            case "kinds" -> !mention.selecting() && !catalog.kinds().containsKey(mention.id());
            case "currencies" -> !catalog.currencies().containsKey(mention.id());
            case "goods" -> !catalog.goods().containsKey(mention.id());
            default -> false;
        };
    }

    private static boolean comparing(SchemaProblem problem) {
        String[] steps = problem.origin().pointer().split("/", -1);
        return steps.length == 4 && steps[1].equals("attributes") && COMPARING.contains(problem.meant().filter(COMPARING::contains).orElse(steps[3]));
    }

    private static boolean in(Set<Place> flawed, Origin origin) {
        return entry(origin).filter(flawed::contains).isPresent();
    }

    /** The entry that something is in or stands for; none where it is a whole document or section, or decides nothing about parts. */
    private static Optional<Place> entry(Origin origin) {
        String[] steps = origin.pointer().split("/", -1);
        boolean deciding = steps.length > 2 && DECIDING.contains(steps[1]) && (steps.length == 3 || !WORDS.contains(steps[3]));
        return deciding ? Optional.of(new Place(origin.file(), "/" + steps[1] + "/" + steps[2])) : Optional.empty();
    }

    boolean has(String part) {
        return parts.contains(part);
    }

    /** Whether one of them is in an assembly. */
    boolean in(Optional<Assembly> assembly) {
        return !parts.isEmpty() && assembly.stream().flatMap(some -> some.parts().stream()).anyMatch(parts::contains);
    }
}

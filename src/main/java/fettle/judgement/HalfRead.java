package fettle.judgement;

import fettle.catalog.Catalog;
import fettle.catalog.Offer;
import fettle.catalog.Part;
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
 * Where the catalog states something that could not be read, and that decides about parts.
 *
 * @param parts the ids of those of which it is stated, or of which an offer states it: without it nothing can be said of what they are worth; all, where it says how any two compare
 * @param files the documents that hold such
 */
public record HalfRead(Set<String> parts, Set<String> files) {

    static final HalfRead NONE = new HalfRead(Set.of(), Set.of());

    private static final Set<String> WORDS = Set.of("label", "note");
    /** What an attribute says of how any two parts compare. */
    private static final Set<String> COMPARING = Set.of("better", "combine");
    private static final Set<String> DECIDING = Set.of("parts", "platforms", "offers", "constraints", "attributes", "goods", "currencies", "lenses");

    public HalfRead {
        parts = Set.copyOf(parts);
        files = Set.copyOf(files);
    }

    /** Where an entry begins: nothing is in two places. */
    private record Place(String file, String pointer) {}

    static HalfRead of(DocumentSet documents, List<SchemaProblem> schemaProblems, Catalog catalog) {
        Set<Place> flawed = Stream.concat(schemaProblems.stream().map(SchemaProblem::origin), documents.problems().map(DocumentProblem::origin))
                .flatMap(origin -> entry(origin).stream()).collect(Collectors.toSet());
        if (flawed.isEmpty()) {
            return NONE;
        }
        Set<String> parts = new HashSet<>();
        boolean common = schemaProblems.stream().anyMatch(HalfRead::comparing);
        catalog.parts().values().stream().filter(part -> common || flawed.contains(place(part.origin()))).map(Part::id).forEach(parts::add);
        catalog.offers().stream().filter(offer -> flawed.contains(place(offer.origin()))).map(Offer::part).forEach(parts::add);
        return new HalfRead(parts, flawed.stream().map(Place::file).collect(Collectors.toSet()));
    }

    private static boolean comparing(SchemaProblem problem) {
        String[] steps = problem.origin().pointer().split("/", -1);
        return steps.length == 4 && steps[1].equals("attributes") && COMPARING.contains(problem.meant().filter(COMPARING::contains).orElse(steps[3]));
    }

    private static Place place(Origin origin) {
        return new Place(origin.file(), origin.pointer());
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

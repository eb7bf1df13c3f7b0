package fettle.judgement;

import fettle.space.Assembly;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** Names assemblies by their parts. */
final class Assemblies {

    /** What stands between a head and what is on it. */
    static final String WITH = " with ";

    private Assemblies() {}

    /** A choice by its parts; an empty one is told as such. */
    static String words(Optional<Assembly> choice) {
        return words(choice.map(Assembly::paths).orElse(new TreeMap<>()));
    }

    /** The head with what is on it, by path within the place; an empty slot is told as such. */
    static String words(SortedMap<String, String> parts) {
        if (parts.isEmpty()) {
            return "an empty slot";
        }
        List<String> rest = new ArrayList<>();
        parts.forEach((path, part) -> {
            if (!path.isEmpty()) {
                rest.add(part);
            }
        });
        return parts.get("") + (rest.isEmpty() ? "" : WITH + String.join(", ", rest));
    }
}

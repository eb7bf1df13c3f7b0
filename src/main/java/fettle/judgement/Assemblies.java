package fettle.judgement;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;

/** Names assemblies by their parts. */
final class Assemblies {

    private Assemblies() {}

    /** The head with what is on it, by path within the place; {@code nothing} where that is so. */
    static String words(SortedMap<String, String> parts) {
        if (parts.isEmpty()) {
            return "nothing";
        }
        List<String> rest = new ArrayList<>();
        parts.forEach((path, part) -> {
            if (!path.isEmpty()) {
                rest.add(part);
            }
        });
        return parts.get("") + (rest.isEmpty() ? "" : " with " + String.join(", ", rest));
    }
}

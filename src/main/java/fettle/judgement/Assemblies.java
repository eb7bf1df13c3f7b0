package fettle.judgement;

import fettle.space.Assembly;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Names assemblies by their parts. */
public final class Assemblies {

    /** What stands between a head and what is on it. */
    static final String WITH = " with ";

    private Assemblies() {}

    /** A choice by its parts; an empty one is told as such. */
    static String words(Optional<Assembly> choice) {
        return words(choice.map(Assembly::paths).orElse(new TreeMap<>()));
    }

    /** The head with what is on it, by path within the place; an empty slot is told as such. */
    static String words(SortedMap<String, String> parts) {
        return parts.isEmpty() ? "an empty slot" : filled(parts);
    }

    /**
     * The head with what is on it and where that goes, as a build writes it.
     *
     * @param path where the head stands
     * @param parts by path within the place, where the head's own is empty; at least that
     */
    static String placed(String path, SortedMap<String, String> parts) {
        List<String> rest = parts.entrySet().stream().filter(part -> !part.getKey().isEmpty()).map(part -> part.getValue() + " at " + path + "/" + part.getKey()).toList();
        int last = rest.size() - 1;
        return rest.isEmpty() ? parts.get("")
                : parts.get("") + WITH + (last == 0 ? "" : String.join(", ", rest.subList(0, last)) + " and ") + rest.get(last);
    }

    /**
     * The head with what is on it, what is there more than once being counted.
     *
     * @param parts by path within the place, where the head's own is empty
     */
    public static String filled(SortedMap<String, String> parts) {
        Map<String, Long> counts = parts.entrySet().stream().filter(part -> !part.getKey().isEmpty())
                .collect(Collectors.groupingBy(Map.Entry::getValue, LinkedHashMap::new, Collectors.counting()));
        String rest = counts.entrySet().stream().map(each -> (each.getValue() > 1 ? each.getValue() + " times " : "") + each.getKey()).collect(Collectors.joining(", "));
        return parts.get("") + (rest.isEmpty() ? "" : WITH + rest);
    }
}

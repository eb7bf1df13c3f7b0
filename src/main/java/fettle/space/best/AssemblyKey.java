package fettle.space.best;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/** Equal for assemblies that differ in nothing but the order of parts within a slot. */
final class AssemblyKey {

    private AssemblyKey() {}

    /** Of an assembly, by path within it. */
    static Object of(SortedMap<String, String> assembly) {
        // Without a slot of several there is no order to differ in.
        if (assembly.keySet().stream().noneMatch(path -> path.indexOf(':') >= 0)) {
            return assembly;
        }
        SortedMap<String, String> full = new TreeMap<>();
        assembly.forEach((path, part) -> full.put(full(path), part));
        return below("", full);
    }

    /** The path with each position told. */
    private static String full(String path) {
        if (path.isEmpty()) {
            return path;
        }
        StringBuilder full = new StringBuilder();
        for (String step : path.split("/")) {
            full.append('/').append(step.indexOf(':') < 0 ? step + ":0" : step);
        }
        return full.toString();
    }

    /** What is at a path, and below it slot by slot. */
    private static List<Object> below(String path, SortedMap<String, String> all) {
        List<Object> key = new ArrayList<>();
        key.add(String.valueOf(all.get(path)));
        List<String> under = new ArrayList<>();
        for (String other : all.tailMap(path + "/").keySet()) {
            if (!other.startsWith(path + "/")) {
                break;
            }
            if (other.indexOf('/', path.length() + 1) < 0) {
                under.add(other.substring(path.length() + 1, other.lastIndexOf(':')) + "=" + below(other, all));
            }
        }
        under.sort(null);
        key.addAll(under);
        return key;
    }
}

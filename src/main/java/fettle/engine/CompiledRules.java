package fettle.engine;

import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Rules ready to be loaded: classes, the names of the models among them, and their index.
 *
 * <p>What compiling leaves.
 *
 * @param classes class files by path, {@code a/b/C.class}
 * @param index   what the classes hold
 */
record CompiledRules(SortedMap<String, byte[]> classes, RuleIndex index) {
    CompiledRules {
        classes = Collections.unmodifiableSortedMap(new TreeMap<>(classes));
    }
}

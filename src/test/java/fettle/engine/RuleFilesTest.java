package fettle.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.kie.api.definition.rule.Rule;
/** The program loads each rule that stands in {@code rules/}, and no other. */
class RuleFilesTest {
    private static final Pattern PACKAGE = Pattern.compile("^package\\s+([\\w.]+)", Pattern.MULTILINE);
    private static final Pattern RULE = Pattern.compile("^rule\\s+\"([^\"]+)\"", Pattern.MULTILINE);

    @Test
    void loaded_rules_are_those_of_the_files() throws IOException {
        Map<String, SortedSet<String>> written = written();
        assertFalse(written.isEmpty());
        Map<String, SortedSet<String>> loaded = new TreeMap<>();
        for (Unit unit : Unit.values()) {
            if (written.containsKey(unit.packageName())) {
                SortedSet<String> names = loaded.computeIfAbsent(unit.packageName(), name -> new TreeSet<>());
                RuleBase.builtIn().base(unit).getKiePackages().stream().flatMap(each -> each.getRules().stream())
                        .map(Rule::getName).forEach(names::add);
            }
        }
        assertEquals(written, loaded);
    }

    @Test
    void the_index_names_each_folder_once() throws IOException {
        try (Stream<Path> paths = Files.walk(Path.of("rules"), 2)) {
            List<String> folders = paths.filter(path -> path.getNameCount() == 3)
                    .map(path -> path.getFileName().toString()).sorted().toList();
            assertFalse(folders.isEmpty());
            assertEquals(folders, RuleIndex.builtIn().rules().stream().map(RuleInfo::name).toList());
        }
    }

    private static Map<String, SortedSet<String>> written() throws IOException {
        Map<String, SortedSet<String>> rules = new TreeMap<>();
        try (Stream<Path> paths = Files.walk(Path.of("rules"))) {
            for (Path file : paths.filter(path -> path.toString().endsWith(".drl")).toList()) {
                String text = Files.readString(file);
                Matcher name = PACKAGE.matcher(text);
                Matcher rule = RULE.matcher(text);
                assertEquals(true, name.find(), file + " declares a package");
                while (rule.find()) {
                    rules.computeIfAbsent(name.group(1), unit -> new TreeSet<>()).add(rule.group(1));
                }
            }
        }
        return rules;
    }
}

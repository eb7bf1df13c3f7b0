package fettle.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
/** The build step writes the same bytes for the same rules, and nothing for unchanged ones. */
class RuleCompilerTest {
    private static final ClassLoader FACTS = RuleCompilerTest.class.getClassLoader();

    @TempDir
    private Path folder;
    private RuleWorkshop workshop;
    private Path classes;

    @BeforeEach
    void copy_the_good_rules() {
        workshop = RuleWorkshop.below(folder);
        classes = folder.resolve("classes");
    }

    @Test
    void classes_and_index_are_written() throws IOException {
        build();
        RuleIndex index = index();
        assertEquals(List.of("lonely-slot", "same-kind"), index.rules().stream().map(RuleInfo::name).toList());
        assertEquals(RuleFolders.strict(workshop.rules()).infos(), index.rules());
        for (Unit unit : Unit.values()) {
            assertEquals(1, index.models().get(unit).size());
            assertTrue(Files.exists(classes.resolve(index.models().get(unit).get(0).replace('.', '/') + ".class")));
        }
    }

    @Test
    void two_builds_give_the_same_bytes() throws IOException, InterruptedException {
        assertEquals("", buildInItsOwnProcess());
        Map<String, String> first = written();
        classes = folder.resolve("again");
        assertEquals("", buildInItsOwnProcess());
        assertEquals(first, written());
        assertTrue(first.size() > 10, () -> "only " + first.keySet());
    }

    @Test
    void faults_stop_the_process_and_are_told() throws IOException, InterruptedException {
        workshop.delete("relation/same-kind/page.md");
        String told = buildInItsOwnProcess();
        assertEquals("1 " + workshop.rules() + "/relation/same-kind: "
                + "The rule has no page; write page.md beside its DRL.", told);
    }

    @Test
    void unchanged_rules_are_left_alone() throws IOException {
        build();
        FileTime old = FileTime.fromMillis(1_000_000);
        Files.setLastModifiedTime(classes.resolve(RuleIndex.RESOURCE), old);
        build();
        assertEquals(old, Files.getLastModifiedTime(classes.resolve(RuleIndex.RESOURCE)));
        workshop.change("judgement/lonely-slot/page.md", "It looks bare.", "It looks very bare.");
        build();
        assertTrue(index().find("lonely-slot").orElseThrow().page().contains("It looks very bare."));
    }

    @Test
    void a_rule_taken_away_leaves_no_classes() throws IOException {
        build();
        workshop.delete("relation/same-kind/same-kind.drl").delete("relation/same-kind/page.md");
        build();
        assertFalse(Files.exists(classes.resolve("fettle/rules/relation")));
        assertEquals(List.of("lonely-slot"), index().rules().stream().map(RuleInfo::name).toList());
    }

    @Test
    void no_rules_stop_the_build() throws IOException {
        Path none = Files.createDirectories(folder.resolve("none"));
        RuleErrors errors = assertThrows(RuleErrors.class, () -> RuleCompiler.build(none, classes, FACTS));
        assertEquals(none + ": There are no rules here; nothing can be built without.", errors.getMessage());
    }

    private void build() throws IOException {
        RuleCompiler.build(workshop.rules(), classes, FACTS);
    }

    /** As the project's build does it: the engine counts names up within one process. Tells what went wrong. */
    private String buildInItsOwnProcess() throws IOException, InterruptedException {
        Process process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-cp",
                System.getProperty("java.class.path"), RuleCompiler.class.getName(),
                workshop.rules().toString(), classes.toString()).redirectErrorStream(true).start();
        String told = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
        int exit = process.waitFor();
        return exit == 0 ? told : exit + " " + told;
    }

    private RuleIndex index() throws IOException {
        try (InputStream in = Files.newInputStream(classes.resolve(RuleIndex.RESOURCE))) {
            return RuleIndexFormat.read(in);
        }
    }

    private Map<String, String> written() throws IOException {
        Map<String, String> files = new TreeMap<>();
        try (Stream<Path> paths = Files.walk(classes)) {
            for (Path path : paths.filter(Files::isRegularFile).toList()) {
                files.put(classes.relativize(path).toString(), HexFormat.of().formatHex(Files.readAllBytes(path)));
            }
        }
        return files;
    }
}

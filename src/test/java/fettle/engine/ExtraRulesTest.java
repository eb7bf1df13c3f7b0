package fettle.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
/** Rules that a user adds run beside the built-in ones, and are compiled once. */
class ExtraRulesTest {
    private static final String RULE = """
            package fettle.rules.relation
            import fettle.engine.Widget
            import fettle.engine.Socket
            global fettle.engine.PairSink relations

            rule "anything-goes-right"
              @law("Every widget fits a socket called right.")
              @message("{widget} fits {socket}")
            when
              $socket : Socket(id == "right")
              $widget : Widget()
            then
              relations.pair("anything-goes-right", $socket, $widget);
            end
            """;

    @TempDir
    private Path folder;
    private LoadableRules builtIn;
    private Path extra;
    private Path caches;
    private RuleCache cache;

    @BeforeEach
    void prepare() throws IOException {
        builtIn = RuleWorkshop.below(folder).load();
        extra = Files.createDirectories(folder.resolve("extra"));
        caches = folder.resolve("cache");
        cache = new RuleCache(Optional.of(caches));
        Files.writeString(extra.resolve("anything-goes-right.drl"), RULE);
    }

    @Test
    void a_loose_file_adds_to_the_built_in_rules() {
        assertEquals(List.of("anything-goes-right: host/right a", "anything-goes-right: host/right b",
                "anything-goes-right: host/right host", "same-kind: host/left a", "same-kind: host/left b"),
                pairs(cache));
    }

    @Test
    void the_index_tells_of_both() {
        RuleIndex index = new RuleBase(List.of(builtIn, ExtraRules.load(extra, cache, builtIn))).index();
        assertEquals(List.of("anything-goes-right", "lonely-slot", "same-kind"),
                index.rules().stream().map(RuleInfo::name).toList());
        assertEquals("extra", index.find("anything-goes-right").orElseThrow().topic());
        assertEquals("lonely-slot", index.owner("lonely-slot: by tag").orElseThrow().name());
        assertEquals(Optional.empty(), index.find("lonely-slot: by tag"));
    }

    @Test
    void a_folder_with_a_page_adds_too() throws IOException {
        Path ruleFolder = Files.createDirectories(extra.resolve("house/anything-goes-right"));
        Files.move(extra.resolve("anything-goes-right.drl"), ruleFolder.resolve("relation.drl"));
        Files.writeString(ruleFolder.resolve("page.md"), "# anything-goes-right\n\n"
                + "Every widget fits a socket called right.\n\n## Why it matters\nIt is roomy.\n");
        assertEquals("house", ExtraRules.load(extra, cache, builtIn).index().rules().get(0).topic());
        assertEquals(5, pairs(cache).size());
    }

    @Test
    void the_same_rules_are_compiled_once() throws IOException {
        pairs(cache);
        assertEquals(1, archives().size());
        Path kept = archives().get(0);
        assertEquals(5, pairs(cache).size());
        assertEquals(List.of(kept), archives());
        CompiledRules read = cache.get(kept.getFileName().toString().replace(".zip", ""), () -> {
            throw new AssertionError("compiled again");
        });
        assertEquals("anything-goes-right", read.index().rules().get(0).name());
    }

    @Test
    void changed_rules_are_compiled_anew() throws IOException {
        pairs(cache);
        Files.writeString(extra.resolve("anything-goes-right.drl"), RULE.replace("\"right\"", "\"left\""));
        assertEquals(List.of("anything-goes-right: host/left a", "anything-goes-right: host/left b",
                "anything-goes-right: host/left host", "same-kind: host/left a", "same-kind: host/left b"),
                pairs(cache));
        assertEquals(2, archives().size());
    }

    @Test
    void a_damaged_archive_is_replaced() throws IOException {
        pairs(cache);
        Path kept = archives().get(0);
        byte[] whole = Files.readAllBytes(kept);
        Files.write(kept, Arrays.copyOf(whole, whole.length / 2));
        assertEquals(5, pairs(cache).size());
        assertEquals(whole.length, Files.size(kept));
    }

    @Test
    void without_a_usable_cache_rules_run_all_the_same() throws IOException {
        assertEquals(5, pairs(new RuleCache(Optional.empty())).size());
        Files.writeString(folder.resolve("file"), "in the way");
        assertEquals(5, pairs(new RuleCache(Optional.of(folder.resolve("file/cache")))).size());
    }

    @Test
    void a_cache_that_others_can_write_to_is_not_used() throws IOException {
        Files.createDirectories(caches);
        Files.setPosixFilePermissions(caches, PosixFilePermissions.fromString("rwxrwxrwx"));
        assertEquals(5, pairs(cache).size());
        assertEquals(List.of(), archives());
    }

    @Test
    void the_oldest_archives_are_forgotten() {
        for (int i = 0; i < 25; i++) {
            RuleIndex index = new RuleIndex("digest" + i, Map.of(), List.of());
            cache.get(index.digest(), () -> new CompiledRules(new TreeMap<>(), index));
        }
        assertEquals(20, archives().size());
    }

    @Test
    void a_fault_in_a_rule_is_told_with_file_and_line() throws IOException {
        Files.writeString(extra.resolve("anything-goes-right.drl"), RULE.replace("relations.pair", "relations.couple"));
        RuleErrors errors = assertThrows(RuleErrors.class, () -> ExtraRules.load(extra, cache, builtIn));
        RuleProblem problem = errors.problems().get(0);
        assertEquals(extra.resolve("anything-goes-right.drl").toString(), problem.file());
        assertEquals(13, problem.line());
        assertEquals("The method couple(String, Socket, Widget) is undefined for the type PairSink", problem.text());
        assertEquals(List.of(), archives());
    }

    @Test
    void the_name_of_a_built_in_rule_is_refused() throws IOException {
        Files.move(extra.resolve("anything-goes-right.drl"), extra.resolve("same-kind.drl"));
        Files.writeString(extra.resolve("same-kind.drl"), RULE.replace("anything-goes-right", "same-kind"));
        RuleErrors errors = assertThrows(RuleErrors.class, () -> ExtraRules.load(extra, cache, builtIn));
        assertEquals(extra + ": The name same-kind is that of a built-in rule; choose another.", errors.getMessage());
    }

    @Test
    void a_directory_without_rules_is_refused() throws IOException {
        Path none = Files.createDirectories(folder.resolve("none"));
        RuleErrors errors = assertThrows(RuleErrors.class, () -> ExtraRules.load(none, cache, builtIn));
        assertEquals(none + ": There is no rule file (*.drl) here.", errors.getMessage());
        Path absent = folder.resolve("absent");
        errors = assertThrows(RuleErrors.class, () -> ExtraRules.load(absent, cache, builtIn));
        assertEquals(absent + ": This is not a directory of rules.", errors.getMessage());
    }

    @Test
    void a_rule_without_end_is_stopped_and_named() throws IOException {
        Files.writeString(extra.resolve("anything-goes-right.drl"), RULE.replace("relations.pair(\"anything-goes-right\", $socket, $widget);", "update($widget);"));
        RuleFault fault = assertThrows(RuleFault.class, () -> pairs(cache));
        assertEquals("The rule anything-goes-right seems to have no end: rules fired 1002000 times", fault.getMessage());
        assertTrue(fault.given());
    }

    @Test
    void a_rule_that_adds_facts_without_end_is_stopped_and_named() throws IOException {
        String adding = RULE.substring(0, RULE.indexOf("when")) + """
                when
                    $one : Integer()
                then
                    insert($one + 1);
                end

                rule "adds-the-first"
                when
                    Widget()
                then
                    insert(1);
                end
                """;
        Files.writeString(extra.resolve("anything-goes-right.drl"), adding);
        RuleFault fault = assertThrows(RuleFault.class, () -> pairs(cache));
        assertEquals("The rule anything-goes-right seems to have no end: rules added more than 200200 facts", fault.getMessage());
        assertTrue(fault.given());
    }

    private List<String> pairs(RuleCache used) {
        Heard heard = new Heard();
        new RuleBase(List.of(builtIn, ExtraRules.load(extra, used, builtIn)))
                .run(Unit.RELATION, Map.of("relations", heard), RuleWorkshop.facts());
        return heard.sorted();
    }

    private List<Path> archives() {
        try (Stream<Path> files = Files.list(caches)) {
            return files.sorted().toList();
        } catch (IOException absent) {
            return List.of();
        }
    }
}

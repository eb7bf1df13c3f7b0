package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What a document becomes when a completion is taken; a bar stands where someone types. */
class CompletionTest extends LanguageServerTalk {

    private static final String BUILD = "build:\n  id: one\n  platform: bench\n  parts:\n";

    @BeforeEach
    void begin() throws Exception {
        greet();
        open(parts, PARTS);
        told(parts, List::isEmpty);
    }

    private Map<String, CompletionItem> offered(String name, String typing) throws Exception {
        Path file = catalog.resolve(name);
        open(file, typing.replace("|", ""));
        Map<String, CompletionItem> offered = offered(file, at(typing, typing.substring(0, typing.indexOf('|'))));
        server.getTextDocumentService().didClose(new DidCloseTextDocumentParams(new TextDocumentIdentifier(uri(file))));
        return offered;
    }

    private String completed(String name, String typing, String word) throws Exception {
        CompletionItem item = offered(name, typing).get(word);
        return replaced(typing.replace("|", ""), item.getTextEdit().getLeft());
    }

    @Test
    void a_value_in_json_gets_both_its_quotes_and_a_truth_value_none() throws Exception {
        assertEquals("{ \"parts\": [ { \"id\": \"x\", \"kind\": \"grip\" } ] }", completed("a.json", "{ \"parts\": [ { \"id\": \"x\", \"kind\": | } ] }", "grip"));
        assertEquals("{ \"parts\": [ { \"id\": \"x\", \"mounts\": [\"peg\"] } ] }", completed("b.json", "{ \"parts\": [ { \"id\": \"x\", \"mounts\": [|] } ] }", "peg"));
        assertEquals("{ \"parts\": [ { \"kind\": \"grip\" } ] }", completed("c.json", "{ \"parts\": [ { \"kind\": \"gr| } ] }", "grip"));
        assertEquals("{ \"kinds\": [ { \"id\": \"x\", \"role\": true } ] }", completed("d.json", "{ \"kinds\": [ { \"id\": \"x\", \"role\": | } ] }", "true"));
        assertEquals("{ \"kinds\": [ { \"id\": \"x\", \"role\": true } ] }", completed("e.json", "{ \"kinds\": [ { \"id\": \"x\", \"role\": \"tr|\" } ] }", "true"));
        assertEquals("{ \"build\": { \"id\": \"two\", \"platform\": \"bench\", \"parts\": { \"hand\": \"knob\" } } }",
                completed("builds/a.json", "{ \"build\": { \"id\": \"two\", \"platform\": \"bench\", \"parts\": { \"hand\": | } } }", "knob"));
    }

    @Test
    void where_an_object_is_wanted_its_properties_are_offered() throws Exception {
        assertEquals("parts: ", completed("a.yaml", "|", "parts"));
        assertEquals("parts: ", completed("b.yaml", "par|", "parts"));
        assertEquals("build:\n  platform: \n", completed("builds/c.yaml", "build:\n  |\n", "platform"));
        assertEquals("parts:\n  - id: \n", completed("d.yaml", "parts:\n  - |\n", "id"));
        assertEquals("parts:\n  - id: \n", completed("e.yaml", "parts:\n  |\n", "id"));
        assertEquals("parts:\n  - id: x\n    stats:\n      mass: \n", completed("f.yaml", "parts:\n  - id: x\n    stats:\n      |\n", "mass"));
        assertFalse(offered("g.yaml", "parts:\n  - id: x\n    stats: { mass: 2, | }\n").containsKey("mass"), "a figure that is there already is offered again");
    }

    @Test
    void what_the_schema_says_by_way_of_another_place_is_offered_too() throws Exception {
        assertEquals("platforms:\n  - id: x\n    slots:\n      - { id: a, required: true }\n", completed("a.yaml", "platforms:\n  - id: x\n    slots:\n      - { id: a, required: | }\n", "true"));
        assertTrue(offered("b.yaml", "platforms:\n  - id: x\n    slots:\n      - |\n").containsKey("mounts"));
    }

    @Test
    void a_build_is_offered_its_free_slots_from_the_first_on() throws Exception {
        assertEquals(Set.of("hand", "top"), offered("builds/a.yaml", BUILD + "    |\n").keySet());
        assertEquals(BUILD + "    hand: \n", completed("builds/b.yaml", BUILD + "    ha|\n", "hand"));
        assertEquals(BUILD + "    hand: knob\n", completed("builds/c.yaml", BUILD + "    hand:|\n", "knob"));
        Set<String> ofEntry = offered("builds/d.yaml", BUILD + "    top: [{ part: riser, | }]\n").keySet();
        assertTrue(ofEntry.contains("at") && !ofEntry.contains("hand"), ofEntry.toString());
    }

    @Test
    void a_selector_goes_on_behind_its_colon() throws Exception {
        String selecting = "parts:\n  - id: x\n    excludes:\n      - kind:|\n";
        assertEquals(selecting.replace("kind:|", "kind:grip"), completed("a.yaml", selecting, "kind:grip"));
    }

    @Test
    void a_word_that_yaml_would_not_read_as_a_text_is_offered_in_quotes() throws Exception {
        open(catalog.resolve("odd.yaml"), "kinds: [{ id: \"45\" }, { id: \"null\" }, { id: \"1e3\" }, { id: \"true\" }]\n");
        told(catalog.resolve("odd.yaml"), found -> true);
        String typing = "parts:\n  - id: x\n    kind: |\n";
        for (String odd : List.of("45", "null", "1e3", "true")) {
            assertEquals(typing.replace("|", "\"" + odd + "\""), completed("a.yaml", typing, odd));
        }
        assertEquals(typing.replace("|", "'45'"), completed("b.yaml", typing.replace("|", "'|'"), "45"));
        assertEquals("kinds:\n  - id: x\n    role: true\n", completed("c.yaml", "kinds:\n  - id: x\n    role: |\n", "true"));
    }
}

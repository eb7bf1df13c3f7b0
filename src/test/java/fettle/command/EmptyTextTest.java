package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A text with nothing in it is told once, as what the schema doesn't take, and nothing is drawn of it. */
class EmptyTextTest {

    private static final String CATALOG = """
            catalog: { id: c, patch: "1", released: "2031-01-01", currency: scrip }
            currencies: [{ id: scrip, rate: 1 }]
            attributes: [{ id: grip, better: higher, combine: sum }]
            kinds: [{ id: hold, role: true }, { id: end, role: true }]
            mounts: [{ id: peg }]
            vendors: [{ id: market, tiers: 0 }]
            platforms:
              - id: frame
                slots: [{ id: hand, accepts: ["kind:hold"] }, { id: tail, mounts: [peg], accepts: ["kind:end"] }]
            parts:
              - { id: good, kind: hold, stats: { grip: 2 } }
              - { id: stock, kind: end, stats: { grip: 3 } }
            offers:
              - { part: good, vendor: market, price: 2, seen: 2031-01-02 }
              - { part: stock, vendor: market, price: 2, seen: 2031-01-02 }
            """;
    private static final String BUILD = "build: { id: b, platform: frame, parts: { hand: good, tail: stock } }\n";
    private static final Pattern RULE = Pattern.compile("\\(([a-z-]+)\\)$", Pattern.MULTILINE);

    @TempDir
    Path folder;

    private Ran lint(String catalog) throws IOException {
        Files.writeString(folder.resolve("catalog.yaml"), catalog);
        return Ran.fettle("lint", folder.toString());
    }

    private Ran validate(String build) throws IOException {
        lint(CATALOG);
        Path file = Files.createDirectories(folder.resolve("builds")).resolve("b.yaml");
        Files.writeString(file, build);
        return Ran.fettle("validate", folder.toString(), file.toString());
    }

    private static List<String> rules(Ran ran) {
        return RULE.matcher(ran.out()).results().map(rule -> rule.group(1)).toList();
    }

    @Test
    void the_catalog_and_the_build_are_sound() throws IOException {
        assertEquals(List.of(), rules(lint(CATALOG)));
        assertEquals(List.of(), rules(validate(BUILD)));
    }

    @Test
    void an_empty_name_in_a_part_names_nothing() throws IOException {
        for (String said : List.of("excludes: ['']", "excludes: [' ']", "needs: [['']]", "needs: [['', good]]", "claims: ['']", "blocks: ['']", "tags: ['']", "mounts: ['']",
                "traits: { '': [fine] }", "loaded: { '': 2 }", "slots: [{ id: '' }]")) {
            Ran ran = lint(CATALOG.replace("{ id: stock,", "{ id: stock, " + said + ","));
            assertEquals(List.of("schema-mismatch"), rules(ran), () -> said + ": " + ran.out());
        }
    }

    @Test
    void nor_does_one_elsewhere() throws IOException {
        for (String[] change : List.of(
                new String[] {"kind: end,", "kind: '',"}, new String[] {"mounts: [peg]", "mounts: ['']"}, new String[] {"price: 2,", "price: 2, currency: '',"},
                new String[] {"id: c,", "id: '',"}, new String[] {"currency: scrip", "currency: ''"})) {
            Ran ran = lint(CATALOG.replaceFirst(Pattern.quote(change[0]), change[1]));
            assertTrue(rules(ran).stream().noneMatch(rule -> rule.equals("unknown-reference") || rule.equals("unknown-name")), ran.out());
            assertTrue(rules(ran).contains("schema-mismatch") && !ran.out().contains("some id"), ran.out());
        }
        Ran trait = lint(CATALOG.replace("{ id: stock,", "{ id: stock, traits: { weave: [''] },") + "traits: [{ id: weave }]\n");
        assertTrue(!rules(trait).contains("dead-part") && rules(trait).contains("schema-mismatch"), trait.out());
        for (String more : List.of("waivers: [{ rule: no-source, subject: '', because: x }]", "waivers: [{ rule: '', subject: 'part:x', because: x }]",
                "constraints: [{ id: k, when: [good, ''] }]", "constraints: [{ id: k, when: [good], need: [''] }]", "lenses: [{ id: l, weights: { '': 1 } }]",
                "access: [{ id: a, vendors: { '': 1 } }]")) {
            Ran ran = lint(CATALOG + more + "\n");
            assertEquals(List.of("schema-mismatch"), rules(ran), () -> more + ": " + ran.out());
        }
    }

    @Test
    void what_names_an_entry_without_a_name_may_have_meant_it() throws IOException {
        Ran ran = lint(CATALOG.replace("id: stock,", "id: '',"));
        assertEquals(List.of("schema-mismatch", "unknown-reference", "empty-slot"), rules(ran));
        assertTrue(ran.out().contains("Looked at 1 platform, 1 part") && ran.out().contains("first: what is missing may stand there"), ran.out());
    }

    @Test
    void nor_does_one_in_a_build() throws IOException {
        for (String[] change : List.of(
                new String[] {"id: b,", "id: '',"}, new String[] {"platform: frame,", "platform: '',"}, new String[] {"platform: frame,", "platform: frame, lens: '', outfit: ' ',"},
                new String[] {"platform: frame,", "platform: frame, owned: ['']"}, new String[] {"platform: frame,", "platform: frame, access: '',"},
                new String[] {"tail: stock", "tail: ' '"})) {
            Ran ran = validate(BUILD.replace(change[0], change[1] + (change[1].endsWith("]") ? "," : "")));
            assertTrue(rules(ran).stream().allMatch("schema-mismatch"::equals) && !rules(ran).isEmpty(), ran.out());
            assertTrue(!ran.out().contains("on  ,") && !ran.out().contains("build  :") && !ran.out().contains("bought as") && !ran.out().contains("wearing"), ran.out());
        }
    }
}

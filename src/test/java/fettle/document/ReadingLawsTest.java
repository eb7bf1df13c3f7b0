package fettle.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Laws of reading: what is written is read again, and nothing that is read can break the reader. */
class ReadingLawsTest {
    private static final JsonMapper MAPPER = new JsonMapper();

    @Provide
    Arbitrary<BigDecimal> decimals() {
        return Combinators.combine(Arbitraries.bigIntegers().between(BigInteger.TEN.pow(30).negate(), BigInteger.TEN.pow(30)),
                Arbitraries.integers().between(-9, 40)).as(BigDecimal::new);
    }

    @Provide
    Arbitrary<String> texts() {
        return Arbitraries.strings().all().ofMaxLength(20).map(text -> new String(text.getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8));
    }

    @Provide
    Arbitrary<String> soups() {
        return Arbitraries.of("{", "}", "[", "]", ":", ",", "\"", "'", "a", "id", "1", "-", "1e9", "\n", "  ", "\n- ", "\t", "#", "&a ", "*a", "!!str ", "!x ",
                "? ", "|\n", ">-\n", "%", "---\n", "...\n", "\\", "\\u12", "null", "true", "<<", "@", "`", "é", "\u0085", "\u0000", "\uFEFF")
                .list().ofMaxSize(25).map(pieces -> String.join("", pieces));
    }

    @Property
    void decimals_are_read_to_the_last_zero(@ForAll("decimals") BigDecimal decimal) {
        for (String file : List.of("a.json", "a.yaml")) {
            for (String written : List.of(decimal.toString(), decimal.toPlainString())) {
                Document document = Trees.read(file, "{\"x\": " + written + "}");
                assertEquals(List.of(), document.problems());
                assertEquals(new BigDecimal(written), ((Node.Num) ((Node.Obj) document.root().orElseThrow()).members().get("x").value()).value());
            }
        }
    }

    @Property
    void texts_and_names_are_read_as_written(@ForAll("texts") String name, @ForAll("texts") String text) {
        ObjectNode object = MAPPER.createObjectNode().put(name, text);
        ArrayNode list = MAPPER.createArrayNode().add(object).add(text);
        Document document = Trees.read("a.json", MAPPER.writeValueAsString(list));
        assertEquals(List.of(), document.problems());
        assertEquals("[{" + name + "='" + text + "'} '" + text + "']", document.root().map(Trees::bare).orElseThrow());
    }

    @Property(tries = 3000)
    void nothing_that_is_read_breaks_the_reader(@ForAll("soups") String soup) {
        for (String file : List.of("a.json", "a.yaml", "-")) {
            Document document = Trees.read(file, soup);
            assertTrue(document.root().isPresent() || !document.problems().isEmpty(), soup);
            for (DocumentProblem problem : document.problems()) {
                assertFalse(problem.what().isBlank() || problem.remedy().isBlank());
                assertTrue(problem.origin().line() <= soup.length() + 1);
            }
        }
    }

    @Property
    void a_sound_document_cut_anywhere_yields_a_piece_of_it_or_nothing(@ForAll("cuts") int cut) {
        String text = "{\"kinds\": [{\"id\": \"k\"}], \"parts\": [{\"id\": \"p\", \"kind\": \"k\", \"tags\": [\"a\", \"b\"]}, {\"id\": \"q\", \"kind\": \"k\"}]}";
        Document document = Trees.read("a.json", text.substring(0, Math.min(cut, text.length() - 1)));
        assertEquals(1, document.problems().size());
        List<String> pieces = List.of("nothing", "{kinds=[]}", "{kinds=[{id='k'}]}", "{kinds=[{id='k'}] parts=[]}",
                "{kinds=[{id='k'}] parts=[{id='p' kind='k' tags=['a' 'b']}]}",
                "{kinds=[{id='k'}] parts=[{id='p' kind='k' tags=['a' 'b']} {id='q' kind='k'}]}");
        String read = document.root().map(Trees::bare).orElse("nothing");
        assertTrue(pieces.contains(read), read);
    }

    @Provide
    Arbitrary<Integer> cuts() {
        return Arbitraries.integers().between(0, 110);
    }
}

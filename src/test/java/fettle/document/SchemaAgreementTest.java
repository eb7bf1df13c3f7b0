package fettle.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import com.github.erosb.jsonsKema.JsonParser;
import com.github.erosb.jsonsKema.SchemaLoader;
import com.github.erosb.jsonsKema.Validator;
import fettle.document.SchemaCases.Wrong;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Holds our check of documents against a second, independent validator of JSON Schema 2020-12. */
class SchemaAgreementTest {
    private final Schemas schemas = new Schemas();
    private final Validator otherCatalog = otherValidator("catalog.schema.json");
    private final Validator otherBuild = otherValidator("build.schema.json");

    private static Validator otherValidator(String schema) {
        try (InputStream stream = SchemaAgreementTest.class.getResourceAsStream("/schema/" + schema)) {
            String text = new String(stream.readAllBytes(), StandardCharsets.UTF_8);
            return Validator.forSchema(new SchemaLoader(new JsonParser(text).parse()).load());
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    @Test
    void there_are_enough_documents_to_tell_anything() {
        assertTrue(SchemaCases.right("good-catalogs.yaml").size() + SchemaCases.right("good-builds.yaml").size() >= 35);
        assertTrue(SchemaCases.wrong("good-catalogs.yaml", "bad-catalogs.yaml").size()
                + SchemaCases.wrong("good-builds.yaml", "bad-builds.yaml").size() >= 95);
    }

    @TestFactory
    Stream<DynamicTest> both_validators_pass_right_catalogs() {
        return passing(SchemaCases.right("good-catalogs.yaml"), schemas::checkCatalog, otherCatalog);
    }

    @TestFactory
    Stream<DynamicTest> both_validators_pass_right_builds() {
        return passing(SchemaCases.right("good-builds.yaml"), schemas::checkBuild, otherBuild);
    }

    @TestFactory
    Stream<DynamicTest> both_validators_refuse_wrong_catalogs_and_we_say_why_once() {
        return refused(SchemaCases.wrong("good-catalogs.yaml", "bad-catalogs.yaml"), schemas::checkCatalog, otherCatalog);
    }

    @TestFactory
    Stream<DynamicTest> both_validators_refuse_wrong_builds_and_we_say_why_once() {
        return refused(SchemaCases.wrong("good-builds.yaml", "bad-builds.yaml"), schemas::checkBuild, otherBuild);
    }

    private static Stream<DynamicTest> passing(
            Map<String, String> documents, Function<Document, List<SchemaProblem>> ours, Validator other) {
        return documents.entrySet().stream().map(named -> dynamicTest(named.getKey(), () -> {
            assertEquals(List.of(), ours.apply(read(named.getValue())));
            assertNull(other.validate(new JsonParser(named.getValue()).parse()));
        }));
    }

    private static Stream<DynamicTest> refused(List<Wrong> documents, Function<Document, List<SchemaProblem>> ours, Validator other) {
        return documents.stream().map(wrong -> dynamicTest(wrong.toString(), () -> {
            assertEquals(List.of(wrong.says()), ours.apply(read(wrong.json())).stream().map(SchemaAgreementTest::told).toList());
            assertNotNull(other.validate(new JsonParser(wrong.json()).parse()));
        }));
    }

    private static Document read(String json) {
        Document document = Documents.content("case.json", json.getBytes(StandardCharsets.UTF_8));
        assertEquals(List.of(), document.problems());
        return document;
    }

    private static String told(SchemaProblem problem) {
        return problem.origin().pointer() + ": expected " + problem.expected() + ", found " + problem.found()
                + problem.meant().map(name -> "; meant " + name).orElse("");
    }
}

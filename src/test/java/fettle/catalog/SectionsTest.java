package fettle.catalog;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.json.JsonMapper;

/** The schema is what maintainers write by, so that what is read as a section must be what it has as one. */
class SectionsTest {

    @Test
    void sections_are_the_lists_that_the_schema_has() throws IOException {
        Set<String> lists = new JsonMapper().readTree(Files.readString(Path.of("schema/catalog.schema.json"))).get("properties").properties().stream()
                .filter(property -> property.getValue().path("type").asString("").equals("array")).map(property -> property.getKey()).collect(Collectors.toCollection(TreeSet::new));
        assertEquals(lists, Sections.KNOWN_BY.keySet());
    }
}

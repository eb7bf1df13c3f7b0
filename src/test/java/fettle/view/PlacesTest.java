package fettle.view;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fettle.document.Origin;
import org.junit.jupiter.api.Test;

class PlacesTest {

    @Test
    void a_place_is_written_as_editors_take_it() {
        assertEquals("a/b.yaml:3:7", Places.of(new Origin("a/b.yaml", 3, 7, "/x")));
        assertEquals("standard input:3:7", Places.of(new Origin("-", 3, 7, "/x")));
    }

    @Test
    void only_the_name_is_told_of_a_file_that_was_told_before() {
        assertEquals("b.yaml:3:7", Places.of(new Origin("a/b.yaml", 3, 7, "/x"), "a/b.yaml"));
        assertEquals("a/b.yaml:3:7", Places.of(new Origin("a/b.yaml", 3, 7, "/x"), "a/c.yaml"));
    }

    @Test
    void a_file_is_a_uri_reference_whatever_its_name() {
        assertEquals("a/b.yaml", Places.uri("a/b.yaml"));
        assertEquals("../a%20b/%C3%A4%25.yaml", Places.uri("../a b/ä%.yaml"));
        assertEquals("./a:b.yaml", Places.uri("a:b.yaml"));
        assertEquals("file:///tmp/x%23y.yaml", Places.uri("/tmp/x#y.yaml"));
        assertEquals("file:///C:/x.yaml", Places.uri("C:/x.yaml"));
    }
}

package fettle.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Tests that values are read as written and know where they stand. */
class ReadingPlacesTest {
    private static final String JSON = """
            {
              "id": "skiff",
              "stats": { "mass": 1.50, "kick": -2e1 },
              "slots": [
                { "id": "rail", "required": true },
                null
              ]
            }
            """;
    private static final String YAML = """
            # the same
            id: skiff
            stats: { mass: 1.50, "kick": -2e1 }
            slots:
              - id: 'rail'
                required: true
              - ~
            """;

    private static Node root(Document document) {
        assertEquals(List.of(), document.problems());
        return document.root().orElseThrow();
    }

    @Test
    void json_values_and_names_know_their_line_and_column() {
        assertEquals("{id@2:3='skiff'@2:9 stats@3:3={mass@3:14=1.50@3:22 kick@3:28=-2E+1@3:36}@3:12 "
                        + "slots@4:3=[{id@5:7='rail'@5:13 required@5:21=true@5:33}@5:5 null@6:5]@4:12}@1:1",
                Trees.placed(root(Trees.read("a.json", JSON))));
    }

    @Test
    void yaml_values_and_names_know_their_line_and_column() {
        assertEquals("{id@2:1='skiff'@2:5 stats@3:1={mass@3:10=1.50@3:16 kick@3:22=-2E+1@3:30}@3:8 "
                        + "slots@4:1=[{id@5:5='rail'@5:9 required@6:5=true@6:15}@5:5 null@7:5]@5:3}@2:1",
                Trees.placed(root(Trees.read("a.yaml", YAML))));
    }

    @Test
    void equal_json_and_yaml_give_equal_trees() {
        assertEquals(Trees.bare(root(Trees.read("a.json", JSON))), Trees.bare(root(Trees.read("a.yaml", YAML))));
    }

    @Test
    void json_read_as_yaml_gives_the_same_tree_at_the_same_places() {
        assertEquals(Trees.placed(root(Trees.read("a.json", JSON))), Trees.placed(root(Trees.read("a.yml", JSON))));
    }

    @Test
    void pointers_escape_slashes_and_tildes_and_count_from_zero() {
        Node.Obj root = (Node.Obj) root(Trees.read("a.json", "{\"a/b~c\": [{\"x\": 1}, [2, 3]]}"));
        Node.Member member = root.members().get("a/b~c");
        assertEquals("/a~1b~0c", member.key().pointer());
        Node.Arr list = (Node.Arr) member.value();
        assertEquals("/a~1b~0c", list.origin().pointer());
        assertEquals("/a~1b~0c/0/x", ((Node.Obj) list.items().get(0)).members().get("x").value().origin().pointer());
        assertEquals("/a~1b~0c/1/1", ((Node.Arr) list.items().get(1)).items().get(1).origin().pointer());
    }

    @Test
    void columns_count_characters_not_bytes_or_halves_of_them() {
        assertEquals("{ö𝄞@1:2='ß𝄞𝄞'@1:8 x@1:15=1@1:20}@1:1", Trees.placed(root(Trees.read("a.json", "{\"ö𝄞\": \"ß𝄞𝄞\", \"x\": 1}"))));
        assertEquals("{ö𝄞@1:2='ß𝄞𝄞'@1:8 x@1:15=1@1:20}@1:1", Trees.placed(root(Trees.read("a.yaml", "{\"ö𝄞\": \"ß𝄞𝄞\", \"x\": 1}"))));
    }

    @Test
    void every_kind_of_line_break_counts_once() {
        for (String lineBreak : List.of("\n", "\r\n", "\r")) {
            assertEquals("{a@2:1=1@2:6 b@4:1=2@4:6}@1:1",
                    Trees.placed(root(Trees.read("a.json", "{\n\"a\": 1,\n\n\"b\": 2}".replace("\n", lineBreak)))));
            assertEquals("{a@2:1=1@2:4 b@4:1=2@4:4}@2:1",
                    Trees.placed(root(Trees.read("a.yaml", "\na: 1\n\nb: 2\n".replace("\n", lineBreak)))));
        }
    }

    @Test
    void a_byte_order_mark_is_passed_over_and_takes_no_column() {
        assertEquals("{a@1:2=1@1:6}@1:1", Trees.placed(root(Trees.read("a.json", "\uFEFF{\"a\":1}"))));
        assertEquals("{a@1:1=1@1:4}@1:1", Trees.placed(root(Trees.read("a.yaml", "\uFEFFa: 1"))));
    }

    @Test
    void places_stay_right_in_long_documents() {
        StringBuilder text = new StringBuilder("{\"parts\": [\n");
        for (int i = 0; i < 20_000; i++) {
            text.append("  {\"id\": \"p").append(i).append("\"}").append(i < 19_999 ? ",\n" : "\n");
        }
        Node.Obj root = (Node.Obj) root(Trees.read("a.json", text.append("]}").toString()));
        Node.Arr parts = (Node.Arr) root.members().get("parts").value();
        assertEquals(20_000, parts.items().size());
        assertEquals(new Origin("a.json", 20_001, 3, "/parts/19999"), parts.items().get(19_999).origin());
    }

    @Test
    void yaml_scalars_mean_what_the_core_schema_says() {
        assertEquals("[null null true false 'yes' 'no' 12 12 -0.50 0.5 5 1.5E+3 '0x1F' '1_000' '.inf' '2031-01-02' '12' '1.10.2' 'null']",
                Trees.bare(root(Trees.read("a.yaml", """
                        [~, null, true, False, yes, no, 12, +12, -0.50, .5, 5., 1.5e3, 0x1F, 1_000, .inf, 2031-01-02, !!str 12, 1.10.2, "null"]
                        """))));
    }

    @Test
    void yaml_aliases_take_the_pointers_of_their_place_and_keep_the_lines_of_their_text() {
        Document document = Trees.read("a.yaml", """
                base: &base
                  grip: 1
                parts:
                  - *base
                """);
        assertEquals("{base@1:1={grip@2:3=1@2:9}@1:7 parts@3:1=[{grip@2:3=1@2:9}@4:5]@4:3}@1:1", Trees.placed(root(document)));
        Node.Arr parts = (Node.Arr) ((Node.Obj) document.root().orElseThrow()).members().get("parts").value();
        assertEquals("/parts/0/grip", ((Node.Obj) parts.items().get(0)).members().get("grip").value().origin().pointer());
    }

    @Test
    void origins_sort_by_file_line_column_and_pointer() {
        List<Origin> sorted = List.of(new Origin("a", 1, 2, ""), new Origin("a", 1, 10, ""), new Origin("a", 2, 1, "/a"),
                new Origin("a", 2, 1, "/b"), new Origin("b", 1, 1, ""));
        List<Origin> shuffled = new ArrayList<>(List.of(sorted.get(3), sorted.get(4), sorted.get(1), sorted.get(0), sorted.get(2)));
        assertEquals(sorted, shuffled.stream().sorted().toList());
        assertTrue(sorted.get(0).compareTo(new Origin("a", 1, 2, "")) == 0);
    }
}

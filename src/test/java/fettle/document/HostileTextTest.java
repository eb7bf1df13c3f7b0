package fettle.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Tests that broken and hostile texts are told as problems with a place, and that what is sound in them is kept. */
class HostileTextTest {
    private static void assertTold(Document document, String root, String... problems) {
        assertEquals(List.of(problems), Trees.told(document));
        assertEquals(root, document.root().map(Trees::bare).orElse("nothing"));
        document.problems().forEach(problem -> assertFalse(problem.remedy().isBlank()));
    }

    private static void assertJson(String text, String root, String... problems) {
        assertTold(Trees.read("a.json", text), root, problems);
    }

    private static void assertYaml(String text, String root, String... problems) {
        assertTold(Trees.read("a.yaml", text), root, problems);
    }

    @Test
    void slips_in_json_are_named_where_they_stand() {
        assertJson("{\"a\": 1,\n}", "{a=1}", "2:1 : a comma stands before '}'");
        assertJson("{\n  'a': 1}", "nothing", "2:3 : a single quote stands here");
        assertJson("{a: 1}", "nothing", "1:2 : found 'a' where the name of a property is expected");
        assertJson("{\"a\": 1\n \"b\": 2}", "{a=1}", "2:2 : a comma is missing before '\"'");
        assertJson("{\"a\" 1}", "nothing", "1:6 : a colon is missing before '1'");
        assertJson("{\"a\": tru}", "nothing", "1:7 : found 't' where a value is expected");
        assertJson("{\"a\": 01}", "nothing", "1:8 : this is not a JSON number");
        assertJson("{\"a\": .5}", "nothing", "1:7 : this is not a JSON number");
        assertJson("{\"a\": 1 // one\n}", "{a=1}", "1:9 : JSON has no comments, but one begins here");
        assertJson("{\"a\": \"x\ny\"}", "nothing", "1:9 /a: a text holds a line break or another control character");
        assertJson("{\"a\": \"\\q\"}", "nothing", "1:9 /a: a text holds a backslash before 'q', which means nothing");
        assertJson("{\"a\": [1}", "{a=[1]}", "1:9 /a/1: '}' closes nothing that is open here");
        assertJson("{\"a\": [1", "{a=[1]}", "1:9 /a/1: the document ends before everything in it is closed");
        assertJson("{\"a\": 1} {}", "{a=1}", "1:10 : the document has ended, but something follows");
        assertJson("parts", "nothing", "1:1 : found 'p' where a value is expected");
    }

    @Test
    void slips_in_yaml_are_named_where_they_stand() {
        assertYaml("a: 1\nb:\n\t- 2", "{a=1}", "3:1 /b: a tab stands where YAML wants spaces");
        assertYaml("a: 1\nb: x: y", "{a=1 b='x'}", "2:5 : a colon stands where no property can begin");
        assertYaml("a: 1\nb: 'x", "{a=1}", "2:4 /b: the quote that opens here is never closed");
        assertYaml("a: 1\nb: [{c: [1, 2,\n  3, 4\n", "{a=1 b=[]}", "2:9 /b/0/c/4: the bracket that opens here is never closed");
        assertYaml("b: [{c: 1,\n  d: 2\na: [1]\n", "{b=[]}", "3:2 /b/0: a comma or a closing bracket is missing before this, in what opens in line 1");
        assertYaml("a: 1\nb: {c: 1 d: 2}", "{a=1}", "2:11 /b: a comma or a closing bracket is missing before this");
        assertYaml("- 1\nb: 2", "nothing", "2:1 /1: this line does not fit the indentation or the list above it");
        assertYaml("a: @x", "nothing", "1:4 /a: this is not YAML: the parser cannot go on here");
        assertYaml("a: 1\nb: \u0007", "nothing", "2:4 : the character '\\u0007' may not stand in YAML");
        assertYaml("a: 1\nb: [\"\\u0041\", \"\\UFFFFFFFF\"]", "{a=1 b=['A']}", "2:16 /b/1: a text between double quotes holds a backslash that means nothing");
        assertYaml("%YAML 3.0\n---\na: 1", "nothing", "1:1 : this is not YAML");
    }

    @Test
    void what_a_merge_left_behind_is_named_where_it_begins() {
        String merged = "a merge has left both of its sides in the document: a line begins with <<<<<<<";
        assertYaml("a: 1\nb:\n<<<<<<< mine\n  - 2\n=======\n  - 3\n>>>>>>> theirs\n", "{a=1}", "3:1 /b: " + merged);
        assertJson("{\"a\": 1,\n<<<<<<< mine\n\"b\": 2\n=======\n\"b\": 3\n>>>>>>> theirs\n}", "{a=1}", "2:1 : " + merged);
        assertYaml("<<<<<<< mine\na: 1\n=======\na: 2\n>>>>>>> theirs\n", "nothing", "1:1 : " + merged);
        assertYaml("a: '\n\n  <<<<<<< quoted'\n", "{a='\n<<<<<<< quoted'}");
    }

    @Test
    void a_line_between_the_sides_of_a_merge_is_named_only_where_reading_ends_at_it() {
        String merged = "a merge has left both of its sides in the document: a line begins with =======";
        assertYaml("a: 1\n=======\nb: 2\n", "{a=1}", "2:1 : " + merged);
        assertYaml("a: 1\r\n=======\r\nb: 2\r\n", "{a=1}", "2:1 : " + merged);
        assertJson("{\"a\": 1,\n=======\n\"b\": 2}", "{a=1}", "2:1 : " + merged);
        assertYaml("a: |\n  Heading\n  =======\nb: c\nd: @x", "{a='Heading\n=======\n' b='c'}", "5:4 /d: this is not YAML: the parser cannot go on here");
    }

    @Test
    void what_is_complete_before_a_slip_is_kept_and_what_is_cut_short_is_not() {
        assertJson("{\"kinds\": [{\"id\": \"k\"}], \"parts\": [{\"id\": \"p\", \"kind\": \"k\"}, {\"id\": \"q\", ]}",
                "{kinds=[{id='k'}] parts=[{id='p' kind='k'}]}", "1:74 /parts/1: a comma stands before ']'");
        assertYaml("kinds:\n  - id: k\nparts:\n  - id: p\n    kind: k\n  - id: q\n    kind: [",
                "{kinds=[{id='k'}] parts=[{id='p' kind='k'}]}", "7:11 /parts/1/kind/0: the bracket that opens here is never closed");
        assertJson("{\"build\": {\"id\": \"b\", \"parts\": {", "nothing", "1:33 /build/parts: the document ends before everything in it is closed");
    }

    @Test
    void a_name_given_twice_is_told_and_the_first_one_counts() {
        assertJson("{\"a\": 1,\n \"b\": {\"c\": 2, \"c\": {\"d\": 3}},\n \"a\": 4, \"e\": 5}", "{a=1 b={c=2} e=5}",
                "2:16 /b/c: the name \"c\" stands twice in one object, first in line 2",
                "3:2 /a: the name \"a\" stands twice in one object, first in line 1");
        assertYaml("a: 1\nb: 2\n'a': [3]\n", "{a=1 b=2}", "3:1 /a: the name \"a\" stands twice in one object, first in line 1");
    }

    @Test
    void numbers_that_explode_are_refused_and_those_in_bounds_are_kept_exactly() {
        assertJson("{\"a\": 1e999999999, \"b\": 1e-999999999, \"c\": 1e99999999999999, \"d\": 2}", "{a=null b=null c=null d=2}",
                "1:7 /a: the number 1e999999999 is too long to compute with",
                "1:25 /b: the number 1e-999999999 is too long to compute with",
                "1:44 /c: the number 1e99999999999999 is too long to compute with");
        assertYaml("a: 1e+999999999", "{a=null}", "1:4 /a: the number 1e+999999999 is too long to compute with");
        String longest = "1234567890".repeat(4) + "." + "0987654321".repeat(4);
        assertJson("{\"a\": " + longest + "}", "{a=" + longest + "}");
        assertJson("{\"a\": 1e39, \"b\": 1e-40, \"c\": 1e40}", "{a=1E+39 b=1E-40 c=null}", "1:30 /c: the number 1e40 is too long to compute with");
        assertEquals(1, Trees.read("a.json", "{\"a\": " + "9".repeat(1_000_000) + "}").problems().size());
    }

    @Test
    void nesting_is_bounded_at_200() {
        for (String file : List.of("a.json", "a.yaml")) {
            assertTold(Trees.read(file, "[".repeat(200) + "]".repeat(200)), "[".repeat(200) + "]".repeat(200));
            assertTold(Trees.read(file, "[".repeat(201) + "]".repeat(201)), "nothing",
                    "1:201 " + "/0".repeat(200) + ": objects and lists stand more than 200 deep in one another");
            assertEquals(1, Trees.read(file, "[".repeat(300_000)).problems().size());
            assertEquals(1, Trees.read(file, "{\"a\":".repeat(300_000)).problems().size());
        }
        assertEquals(1, Trees.read("a.yaml", "? " + "[".repeat(100_000)).problems().stream()
                .filter(problem -> problem.what().contains("200 deep")).count());
        assertEquals(List.of("1:401 " + "/0".repeat(200) + ": objects and lists stand more than 200 deep in one another"),
                Trees.told(Trees.read("a.yaml", "- ".repeat(250) + "x")));
    }

    @Test
    void ordinary_aliases_work_and_bombs_do_not() {
        assertYaml("a: &x {k: [1]}\nb: *x\nc: [*x, *x]", "{a={k=[1]} b={k=[1]} c=[{k=[1]} {k=[1]}]}");
        assertYaml("a: &x 1\nb: &x 2\nc: *x", "{a=1 b=2 c=2}");
        StringBuilder bomb = new StringBuilder("a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n");
        for (int i = 1; i < 30; i++) {
            bomb.append("a%d: &a%d [%s]\n".formatted(i, i, ("*a" + (i - 1) + ", ").repeat(10)));
        }
        List<String> told = Trees.told(Trees.read("a.yaml", bomb.toString()));
        assertEquals(1, told.size());
        assertTrue(told.get(0).endsWith(": the document's aliases stand for more than 200000 values"), told.get(0));
    }

    @Test
    void aliases_cannot_build_a_tree_deeper_than_the_bound() {
        StringBuilder deep = new StringBuilder("a0: &a0 [x]\n");
        for (int i = 1; i < 300; i++) {
            deep.append("a%d: &a%d [*a%d]\n".formatted(i, i, i - 1));
        }
        Document document = Trees.read("a.yaml", deep.toString());
        assertEquals(List.of("200:14 /a199/0: objects and lists stand more than 200 deep in one another"), Trees.told(document));
    }

    @Test
    void aliases_to_nothing_and_to_themselves_are_told() {
        assertYaml("a: *x\nb: 1", "{a=null b=1}", "1:4 /a: the alias *x names no anchor above it");
        assertYaml("a: &x [1, *x]", "{a=[1 null]}", "1:11 /a/1: the alias *x stands inside what it names");
        assertYaml("&k name: 1\nb: {*k : 2}", "{name=1 b={name=2}}");
    }

    @Test
    void names_that_are_no_texts_are_told() {
        assertYaml("7: a\ntrue: b\n~: c\n'8': d", "{7='a' true='b' ~='c' 8='d'}",
                "1:1 : the name of a property must be a text, but YAML takes 7 for something else",
                "2:1 : the name of a property must be a text, but YAML takes true for something else",
                "3:1 : the name of a property must be a text, but YAML takes ~ for something else");
        assertYaml("? [a, {b: c}]\n: {d: e}\nf: g", "{f='g'}", "1:3 : the name of a property must be a text, but this is none");
    }

    @Test
    void a_decimal_comma_is_told_once_and_what_it_cuts_off_is_no_property() {
        assertYaml("{grip: 2,5, mass: 1}", "{grip=2 mass=1}", "1:8 : YAML takes the comma in 2,5 for the end of 2");
        assertYaml("- {price: -1,200}", "[{price=-1}]", "1:11 /0: YAML takes the comma in -1,200 for the end of -1");
        assertYaml("{grip: 2, 5: 1}", "{grip=2 5=1}", "1:11 : the name of a property must be a text, but YAML takes 5 for something else");
        assertYaml("[2,5]", "[2 5]");
    }

    @Test
    void a_colon_without_a_space_behind_it_is_told_where_it_stands() {
        assertYaml("parts:\n  - id: a\n  - id:tail\n\n    kind: k\n", "{parts=[{id='a'} 'id:tail\nkind']}", "3:5 /parts/2: no space stands behind the colon of id");
        assertYaml("parts:\n  - id: a\n    kind:keel\n    mounts: [m]\n", "{parts=[]}", "3:5 /parts/0: no space stands behind the colon of kind");
        assertYaml("accepts:\n  - kind:spar\n    mounts: [m]\n", "{accepts=['kind:spar mounts']}", "3:11 /accepts/1: a colon stands where no property can begin");
        assertEquals(List.of("write id: tail"), remedies("a.yaml", "parts:\n  - id:tail\n    kind: k\n"));
    }

    @Test
    void a_comma_that_can_part_thousands_is_not_taken_for_one_of_decimals() {
        assertEquals(List.of("write 2000 for thousands, or 2.000 for a decimal"), remedies("a.yaml", "{price: 2,000}"));
        assertEquals(List.of("write 1234567", "write 2.5"), remedies("a.yaml", "{\uD83E\uDE81: {price: 1,234,567, \uD83E\uDE81\uD83E\uDE81: 2,5}}"));
        assertYaml("{price: 1,234.50, mass: 1}", "{price=1 mass=1}", "1:9 : YAML takes the comma in 1,234.50 for the end of 1");
        assertEquals(List.of("write 0.500"), remedies("a.yaml", "{price: 0,500}"));
        assertJson("{\"a\": 1, \"price\": 2,000, \"b\": 1}", "{a=1 price=2}", "1:21 : a number may have no comma, as 2,000 has");
        assertEquals(List.of("write 2000 for thousands, or 2.000 for a decimal"), remedies("a.json", "{\"price\": 2,000}"));
        assertEquals(List.of("write 1234567"), remedies("a.json", "{\"price\":1,234,567}"));
        assertEquals(List.of("write -2.5"), remedies("a.json", "{\"price\":\n-2,5}"));
        assertEquals(List.of("put names between double quotes"), remedies("a.json", "{\"price\": 2, 000}"));
    }

    private static List<String> remedies(String file, String text) {
        return Trees.read(file, text).problems().stream().map(DocumentProblem::remedy).toList();
    }

    @Test
    void tags_mean_nothing_unless_they_are_those_of_json() {
        assertYaml("a: !!str 1\nb: !!int 2\nc: !mine 3\nd: !!python/name:os.system x", "{a='1' b=2 c=3 d='x'}",
                "3:4 /c: the YAML tag \"!mine\" means nothing here",
                "4:4 /d: the YAML tag \"tag:yaml.org,2002:python/name:os.system\" means nothing here");
    }

    @Test
    void a_second_yaml_document_is_told_and_the_first_one_is_kept() {
        assertYaml("a: 1\n---\nb: 2\n", "{a=1}", "3:1 : a second YAML document begins here");
        assertYaml("---\na: 1\n...\n", "{a=1}");
    }

    @Test
    void empty_documents_are_told() {
        for (String empty : List.of("", " \n\t\n", "\uFEFF")) {
            assertJson(empty, "nothing", "1:1 : the document is empty");
        }
        for (String empty : List.of("", "\n", "# only a remark\n", "---\n", "---\n...\n")) {
            assertYaml(empty, "nothing", "1:1 : the document is empty");
        }
    }

    private static void assertBytes(byte[] bytes, String... problems) {
        for (String file : List.of("a.json", "a.yaml")) {
            assertTold(Documents.content(file, bytes), "nothing", problems);
        }
    }

    @Test
    void other_encodings_are_named() {
        String text = "{\"label\": \"Größe\"}";
        for (String mark : List.of("", "\uFEFF")) {
            assertBytes((mark + text).getBytes(StandardCharsets.UTF_16LE), "1:1 : the document is in UTF-16, not in UTF-8");
            assertBytes((mark + text).getBytes(StandardCharsets.UTF_16BE), "1:1 : the document is in UTF-16, not in UTF-8");
        }
        assertBytes(("\uFEFF" + text).getBytes(Charset.forName("UTF-32LE")), "1:1 : the document is in UTF-32, not in UTF-8");
        assertBytes(("\uFEFF" + text).getBytes(Charset.forName("UTF-32BE")), "1:1 : the document is in UTF-32, not in UTF-8");
        assertBytes(("{\n" + text.substring(1)).getBytes(StandardCharsets.ISO_8859_1),
                "2:13 : the document is not in UTF-8: the byte 0xF6 is no character here");
        assertBytes("{\"a\": 1}\n\0".getBytes(StandardCharsets.UTF_8), "2:1 : the document holds a zero byte, as no text does");
        assertBytes(new byte[] {'{', '"', (byte) 0xED, (byte) 0xA0, (byte) 0x80, '"'},
                "1:3 : the document is not in UTF-8: the byte 0xED is no character here");
        assertBytes(new byte[] {'{', '"', (byte) 0xE2, (byte) 0x82}, "1:3 : the document is not in UTF-8: the byte 0xE2 is no character here");
    }

    @Test
    void half_a_character_in_an_escape_does_no_harm() {
        assertJson("{\"\\ud834\": 1}", "nothing", "1:9 : a name holds half of a character, written as \\u");
        assertJson("{\"a\": \"\\udd1e\"}", "{a='\udd1e'}");
        assertEquals("\"\\ud834\"", Words.quoted("\ud834"));
    }

    @Test
    void documents_of_any_size_within_bounds_are_read_and_larger_ones_are_not() {
        byte[] large = ("{\"note\": \"" + "x".repeat(8_000_000) + "\"}").getBytes(StandardCharsets.UTF_8);
        assertEquals(Optional.empty(), Documents.content("a.json", large).problems().stream().findAny());
        assertEquals(List.of(), Documents.content("a.yaml", large).problems());
        assertTold(Documents.content("a.json", new byte[DocumentFile.MOST_BYTES + 1]), "nothing", "1:1 : the document is larger than 16 MiB");
    }

    @Test
    void a_thousand_slips_are_not_told_one_by_one() {
        Document document = Trees.read("a.json", "{" + "\"a\": 1, ".repeat(1000) + "\"b\": 2}");
        assertEquals(101, document.problems().size());
        assertEquals("there are more problems of this sort from here on", document.problems().get(100).what());
        assertEquals("{a=1 b=2}", document.root().map(Trees::bare).orElseThrow());
    }
}

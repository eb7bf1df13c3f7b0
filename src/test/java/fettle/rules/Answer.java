package fettle.rules;

import fettle.command.Main;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What one run of the program said. */
record Answer(int exitCode, String out, String err) {

    private static final JsonMapper JSON = new JsonMapper();

    /** Lints a catalog, or validates the builds that lie in it; compares the two catalogs {@code old} and {@code new} where those lie in it. */
    static Answer on(Path catalog, String format) {
        String directory = slashed(catalog);
        if (Files.isDirectory(catalog.resolve("old")) && Files.isDirectory(catalog.resolve("new"))) {
            List<String> arguments = new ArrayList<>(List.of("compare", directory + "/old", directory + "/new", "--format", format));
            if (Files.isDirectory(catalog.resolve("builds"))) {
                arguments.addAll(List.of("--builds", directory + "/builds"));
            }
            return of(arguments.toArray(String[]::new));
        }
        return Files.isDirectory(catalog.resolve("builds"))
                ? of("validate", directory, directory + "/builds", "--format", format)
                : of("lint", directory, "--format", format);
    }

    static Answer of(String... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int code = Main.run(
                arguments, new ByteArrayInputStream(new byte[0]), new PrintStream(out, true, StandardCharsets.UTF_8), new PrintStream(err, true, StandardCharsets.UTF_8));
        return new Answer(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    /** The same, with one folder's name for another's. */
    Answer telling(Path folder, Path other) {
        return new Answer(exitCode, out.replace(slashed(folder), slashed(other)), err.replace(slashed(folder), slashed(other)));
    }

    private static String slashed(Path path) {
        return path.toString().replace('\\', '/');
    }

    /** The findings of an answer in JSON. */
    List<JsonNode> findings() {
        List<JsonNode> findings = new ArrayList<>();
        JSON.readTree(out).get("findings").forEach(findings::add);
        return findings;
    }

    /** The rules that drew something, each as often as it did. */
    List<String> rules() {
        return findings().stream().map(finding -> finding.get("rule").asString()).toList();
    }

    /** What drew a finding, and on what: {@code rule subject}. */
    List<String> rulesAndSubjects() {
        return findings().stream().map(finding -> finding.get("rule").asString() + " " + finding.get("subject").asString()).toList();
    }
}

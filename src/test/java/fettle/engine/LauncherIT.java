package fettle.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
/** The packaged program starts from anywhere, silently, with the arguments that it was given. */
class LauncherIT {
    private static final Path PROGRAM = Path.of("target/fettle").toAbsolutePath();
    private static final String JAVA_HOME = System.getProperty("java.home");

    @TempDir
    private Path folder;

    private record Ran(int exit, String out, String err) {
    }

    @Test
    void it_starts_and_says_nothing_on_standard_error() throws Exception {
        Ran ran = run(PROGRAM.resolve("bin/fettle"), Map.of("JAVA_HOME", JAVA_HOME), "--version");
        assertEquals("", ran.err());
        assertEquals(0, ran.exit());
        assertFalse(ran.out().isBlank());
    }

    @ParameterizedTest
    @ValueSource(strings = {"--version", "lint", "validate", "survey"})
    void it_takes_its_classes_from_an_archive_whatever_is_asked_of_it(String command) throws Exception {
        Path log = folder.resolve("classes.txt");
        run(PROGRAM.resolve("bin/fettle"), Map.of("JAVA_HOME", JAVA_HOME,
                "FETTLE_JAVA_OPTIONS", "-Xlog:class+load:file=" + log), command);
        String main = Files.readString(log).lines().filter(line -> line.contains(" fettle.command.Main ")).findFirst()
                .orElseThrow();
        assertTrue(main.contains("shared objects file"), main);
    }

    @Test
    void an_archive_of_another_java_is_passed_over_in_silence() throws Exception {
        Path copy = copy();
        Path archive = copy.resolve("lib/fettle.jsa");
        Files.deleteIfExists(archive);
        Files.writeString(archive, "not an archive");
        Ran ran = run(copy.resolve("bin/fettle"), Map.of("JAVA_HOME", JAVA_HOME), "--version");
        assertEquals("", ran.err());
        assertEquals(0, ran.exit());
        assertEquals(run(PROGRAM.resolve("bin/fettle"), Map.of("JAVA_HOME", JAVA_HOME), "--version").out(), ran.out());
    }

    @Test
    void it_starts_where_the_heap_is_held_below_its_first_size() throws Exception {
        Ran ran = run(PROGRAM.resolve("bin/fettle"), Map.of("JAVA_HOME", JAVA_HOME, "FETTLE_JAVA_OPTIONS", "-Xmx48m"), "--version");
        assertEquals("", ran.err());
        assertEquals(0, ran.exit());
    }

    @Test
    void it_starts_through_links_of_links() throws Exception {
        Path links = Files.createDirectories(folder.resolve("a place/bin"));
        Files.createSymbolicLink(links.resolve("absolute"), PROGRAM.resolve("bin/fettle"));
        Files.createSymbolicLink(links.resolve("relative"), Path.of("absolute"));
        Ran ran = run(links.resolve("relative"), Map.of("JAVA_HOME", JAVA_HOME), "--version");
        Files.delete(links.resolve("relative"));
        Files.delete(links.resolve("absolute"));
        assertEquals("", ran.err());
        assertEquals(0, ran.exit());
    }

    @Test
    void arguments_arrive_as_they_were_given() throws Exception {
        Path home = fakeJava("printf '%s\\n' \"$@\"");
        String[] given = {"", "two words", "$HOME `id` \"quoted\" 'single' \\ *", "-x", "--"};
        List<String> lines = run(PROGRAM.resolve("bin/fettle"), Map.of("JAVA_HOME", home.toString()), given).out()
                .lines().toList();
        int main = lines.indexOf("fettle.command.Main");
        assertEquals(Arrays.asList(given), lines.subList(main + 1, lines.size()));
        assertEquals(List.of("-cp", PROGRAM + "/lib/fettle.jar"), lines.subList(main - 2, main));
    }

    @Test
    void large_catalogs_are_given_the_slower_compiler_too_where_they_take_long() throws Exception {
        Path small = Files.createDirectories(folder.resolve("small"));
        Files.writeString(small.resolve("catalog.json"), "{}");
        Path large = Files.createDirectories(folder.resolve("large of name"));
        Files.writeString(large.resolve("catalog.json"), " ".repeat(600_000));
        for (String command : List.of("lint", "survey", "ladder", "validate", "explain")) {
            assertTrue(quickOnly(command, small.toString()), command);
            assertFalse(quickOnly(command, large.toString()), command);
            assertFalse(quickOnly(command, small.toString(), "--progress", large.toString()), command);
        }
        assertTrue(quickOnly("compare", large.toString(), small.toString()));
        assertFalse(quickOnly("improve", small.toString()));
    }

    private boolean quickOnly(String... arguments) throws Exception {
        Path java = fakeJava("printf '<%s>' \"$@\"");
        return run(PROGRAM.resolve("bin/fettle"), Map.of("JAVA_HOME", java.toString()), arguments).out().contains("<-XX:TieredStopAtLevel=1>");
    }

    @Test
    void the_exit_code_is_that_of_the_program() throws Exception {
        Path home = fakeJava("exit 70");
        assertEquals(70, run(PROGRAM.resolve("bin/fettle"), Map.of("JAVA_HOME", home.toString())).exit());
    }

    @Test
    void a_closed_standard_input_is_empty() throws Exception {
        Path home = fakeJava("cat");
        Path script = folder.resolve("closed");
        Files.writeString(script, "#!/bin/sh\nexec \"$@\" <&-\n");
        script.toFile().setExecutable(true);
        Ran ran = run(script, Map.of("JAVA_HOME", home.toString()), PROGRAM.resolve("bin/fettle").toString(), "validate", "catalog", "-");
        assertEquals(new Ran(0, "", ""), ran);
    }

    @Test
    void a_wrong_java_home_is_told() throws Exception {
        Ran ran = run(PROGRAM.resolve("bin/fettle"), Map.of("JAVA_HOME", "/nowhere"));
        assertEquals(new Ran(2, "", "fettle: JAVA_HOME is /nowhere, where there is no bin/java; "
                + "let it name a JDK 17 or later, or unset it.\n"), ran);
    }

    @Test
    void a_java_that_cannot_start_is_no_verdict() throws Exception {
        for (String variable : List.of("FETTLE_JAVA_OPTIONS", "JDK_JAVA_OPTIONS", "JAVA_TOOL_OPTIONS", "_JAVA_OPTIONS")) {
            Ran ran = run(PROGRAM.resolve("bin/fettle"), Map.of("JAVA_HOME", JAVA_HOME, variable, "-Bogus"), "rules");
            assertEquals(new Ran(2, "", "fettle: Java does not start with what is set by " + variable
                    + " (-Bogus); mend or unset that. Java says: Unrecognized option: -Bogus\n"), ran);
        }
        for (String options : List.of("-Xmx10k", "-XX:+UseG1GC", "-XX:+UseSerialGC -XX:+Nope")) {
            Ran ran = run(PROGRAM.resolve("bin/fettle"), Map.of("JAVA_HOME", JAVA_HOME, "FETTLE_JAVA_OPTIONS", options), "rules");
            assertEquals(2, ran.exit(), options);
            assertTrue(ran.err().startsWith("fettle: Java does not start with what is set by FETTLE_JAVA_OPTIONS (" + options + "); mend or unset that. Java says: "), ran.err());
            assertEquals(1, ran.err().lines().count(), ran.err());
        }
    }

    @Test
    void java_is_tried_only_where_options_are_set_and_wait_for_no_debugger() throws Exception {
        Path java = fakeJava("echo started >>" + folder.resolve("starts"));
        run(PROGRAM.resolve("bin/fettle"), Map.of("JAVA_HOME", java.toString()), "rules");
        assertEquals(1, Files.readAllLines(folder.resolve("starts")).size());
        run(PROGRAM.resolve("bin/fettle"), Map.of("JAVA_HOME", java.toString(), "FETTLE_JAVA_OPTIONS", "-agentlib:jdwp=server=y"), "rules");
        assertEquals(2, Files.readAllLines(folder.resolve("starts")).size());
        run(PROGRAM.resolve("bin/fettle"), Map.of("JAVA_HOME", java.toString(), "FETTLE_JAVA_OPTIONS", "-Xmx1g"), "rules");
        assertEquals(4, Files.readAllLines(folder.resolve("starts")).size());
    }

    @Test
    void the_folder_holds_both_scripts_and_only_what_running_takes() throws Exception {
        assertTrue(Files.isExecutable(PROGRAM.resolve("bin/fettle")));
        assertTrue(Files.readString(PROGRAM.resolve("bin/fettle.cmd")).contains("\r\n"));
        try (Stream<Path> lib = Files.list(PROGRAM.resolve("lib"))) {
            List<String> names = lib.map(path -> path.getFileName().toString()).sorted().toList();
            assertTrue(names.contains("fettle.jar") && names.contains("drools-engine-10.2.0.jar"), names::toString);
            assertEquals(List.of(), names.stream().filter(name -> name.matches("(junit|jqwik|archunit|json-sKema).*")).toList());
        }
    }

    private Path fakeJava(String script) throws IOException {
        Path java = Files.createDirectories(folder.resolve("fake/bin")).resolve("java");
        Files.writeString(java, "#!/bin/sh\n" + script + "\n");
        Files.setPosixFilePermissions(java, PosixFilePermissions.fromString("rwxr-xr-x"));
        return folder.resolve("fake");
    }

    private Path copy() throws IOException {
        Path copy = folder.resolve("copy of fettle");
        try (Stream<Path> paths = Files.walk(PROGRAM)) {
            for (Path path : paths.sorted().toList()) {
                Path target = copy.resolve(PROGRAM.relativize(path).toString());
                if (Files.isDirectory(path)) {
                    Files.createDirectories(target);
                } else {
                    Files.copy(path, target);
                    target.toFile().setExecutable(Files.isExecutable(path));
                }
            }
        }
        return copy;
    }

    private Ran run(Path script, Map<String, String> environment, String... arguments)
            throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(script.toString()));
        command.addAll(Arrays.asList(arguments));
        Path out = Files.createTempFile(folder, "out", "");
        Path err = Files.createTempFile(folder, "err", "");
        ProcessBuilder builder = new ProcessBuilder(command).directory(folder.toFile())
                .redirectOutput(out.toFile()).redirectError(err.toFile());
        List.of("FETTLE_JAVA_OPTIONS", "JDK_JAVA_OPTIONS", "JAVA_TOOL_OPTIONS", "_JAVA_OPTIONS").forEach(builder.environment()::remove);
        builder.environment().putAll(environment);
        int exit = builder.start().waitFor();
        return new Ran(exit, Files.readString(out, StandardCharsets.UTF_8), Files.readString(err, StandardCharsets.UTF_8));
    }
}

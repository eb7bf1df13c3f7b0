package fettle.engine;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * Rule folders for tests, copied to a place where a test may change them.
 *
 * <p>Two good rules, {@code relation/same-kind} and {@code judgement/lonely-slot}, and facts for them.
 */
record RuleWorkshop(Path rules) {
    private static final Path MODEL = Path.of("src/test/resources/fettle/engine/rules");

    static RuleWorkshop below(Path folder) {
        Path rules = folder.resolve("rules");
        try (Stream<Path> paths = Files.walk(MODEL)) {
            for (Path path : paths.sorted().toList()) {
                Path copy = rules.resolve(MODEL.relativize(path).toString());
                if (Files.isDirectory(path)) {
                    Files.createDirectories(copy);
                } else {
                    Files.copy(path, copy);
                }
            }
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
        return new RuleWorkshop(rules);
    }

    RuleWorkshop write(String file, String text) {
        try {
            Files.createDirectories(rules.resolve(file).getParent());
            Files.writeString(rules.resolve(file), text);
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
        return this;
    }

    /** Replaces a text that must be there. */
    RuleWorkshop change(String file, String old, String fresh) {
        String text = RuleText.read(rules.resolve(file), file);
        if (!text.contains(old)) {
            throw new IllegalArgumentException(file + " does not say " + old);
        }
        return write(file, text.replace(old, fresh));
    }

    RuleWorkshop delete(String file) {
        try {
            Files.delete(rules.resolve(file));
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
        return this;
    }

    /** The faults of these rules as the build step would tell them, with paths from the rules folder on. */
    List<String> faults() {
        try {
            compile();
            return List.of();
        } catch (RuleErrors errors) {
            return told(errors);
        }
    }

    List<String> told(RuleErrors errors) {
        String above = rules.getParent().toString().replace('\\', '/') + "/";
        return errors.problems().stream().map(problem -> problem.toString().replace(above, "")).toList();
    }

    CompiledRules compile() {
        return DrlCompiler.compile(RuleFolders.strict(rules), "test", RuleWorkshop.class.getClassLoader());
    }

    LoadableRules load() {
        return LoadableRules.of(compile(), RuleWorkshop.class.getClassLoader());
    }

    static List<Record> facts() {
        return List.of(new Socket("host", "left", "round"), new Socket("host", "right", "square"),
                new Widget("a", "round", new BigDecimal("0.5"), List.of("odd", "old")),
                new Widget("b", "round", new BigDecimal("1.25"), List.of()),
                new Widget("host", "round", new BigDecimal("2"), List.of("even")));
    }
}

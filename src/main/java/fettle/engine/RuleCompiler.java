package fettle.engine;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.kie.api.KieServices;

/**
 * The build step that compiles {@code rules/} and writes classes and index beside the program's own classes.
 *
 * <p>Run when the project is built, after its classes are compiled: {@code RuleCompiler RULES CLASSES}.
 */
public final class RuleCompiler {
    private static final String OWN = "fettle/rules/";

    private RuleCompiler() {
    }

    /** Exits with 1, and the faults on standard error, where the rules cannot be used. */
    public static void main(String[] arguments) throws IOException {
        try {
            build(Path.of(arguments[0]), Path.of(arguments[1]), RuleCompiler.class.getClassLoader());
        } catch (RuleErrors errors) {
            System.err.println(errors.getMessage());
            System.exit(1);
        }
    }

    /** Compiles all rules, or does nothing where neither they nor the classes have changed since. */
    static void build(Path rules, Path classes, ClassLoader facts) throws IOException {
        String digest = new Digest().add("engine", engine()).addTree(rules, name -> !name.contains("/cases/"))
                .addTree(classes, name -> name.endsWith(".class") && !name.startsWith(OWN)).hex();
        if (upToDate(classes.resolve(RuleIndex.RESOURCE), digest)) {
            return;
        }
        RuleFolders folders = RuleFolders.strict(rules);
        if (folders.infos().isEmpty()) {
            throw new RuleErrors(RuleProblem.of(rules.toString(), "There are no rules here; nothing can be built without."));
        }
        CompiledRules compiled = DrlCompiler.compile(folders, digest, facts);
        clear(classes.resolve(OWN));
        for (Map.Entry<String, byte[]> entry : compiled.classes().entrySet()) {
            Path file = classes.resolve(entry.getKey());
            Files.createDirectories(file.getParent());
            Files.write(file, entry.getValue());
        }
        Path index = classes.resolve(RuleIndex.RESOURCE);
        Files.createDirectories(index.getParent());
        try (OutputStream out = Files.newOutputStream(index)) {
            RuleIndexFormat.write(compiled.index(), out);
        }
    }

    private static String engine() {
        String version = KieServices.class.getPackage().getImplementationVersion();
        return version == null ? "" : version;
    }

    private static boolean upToDate(Path index, String digest) {
        if (!Files.isRegularFile(index)) {
            return false;
        }
        try (InputStream in = Files.newInputStream(index)) {
            return RuleIndexFormat.read(in).digest().equals(digest);
        } catch (IOException unreadable) {
            return false;
        }
    }

    /** Rules that were taken away must not stay behind as classes. */
    private static void clear(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return;
        }
        List<Path> inside;
        try (Stream<Path> paths = Files.walk(folder)) {
            inside = paths.sorted(Comparator.reverseOrder()).toList();
        }
        for (Path path : inside) {
            Files.delete(path);
        }
    }
}

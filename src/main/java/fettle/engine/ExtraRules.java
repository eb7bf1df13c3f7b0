package fettle.engine;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Compiles rules that a user names on the command line, unless the cache already holds them.
 *
 * <p>The same compiler and the same checks as for the program's own rules; only a page is not demanded.
 */
final class ExtraRules {
    private ExtraRules() {
    }

    static LoadableRules load(Path directory, RuleCache cache, LoadableRules builtIn) {
        String digest = digest(directory, builtIn.index());
        CompiledRules compiled = cache.get(digest,
                () -> DrlCompiler.compile(RuleFolders.lenient(directory), digest, builtIn.loader()));
        requireNewNames(directory, compiled.index(), builtIn.index());
        return LoadableRules.of(compiled, builtIn.loader());
    }

    /** The program's own digest is part of it: rules compiled against other facts would not load. */
    private static String digest(Path directory, RuleIndex builtIn) {
        try {
            return new Digest().add("program", builtIn.digest()).add("directory", directory.toString())
                    .addTree(directory, name -> name.endsWith(".drl") || name.endsWith(RuleFolders.PAGE)).hex();
        } catch (IOException unreadable) {
            throw new RuleErrors(RuleProblem.of(directory.toString(),
                    "The rules cannot be read: " + unreadable.getMessage() + "."));
        }
    }

    private static void requireNewNames(Path directory, RuleIndex extra, RuleIndex builtIn) {
        List<RuleProblem> taken = new ArrayList<>();
        for (RuleInfo rule : extra.rules()) {
            if (builtIn.find(rule.name()).isPresent()) {
                taken.add(RuleProblem.of(directory.toString(),
                        "The name " + rule.name() + " is that of a built-in rule; choose another."));
            }
            rule.drl().values().forEach(names -> names.stream()
                    .filter(name -> !name.equals(rule.name()) && builtIn.owner(name).isPresent())
                    .forEach(name -> taken.add(RuleProblem.of(directory.toString(),
                            "The DRL rule \"" + name + "\" is already in a built-in rule; choose another name."))));
        }
        if (!taken.isEmpty()) {
            throw new RuleErrors(taken);
        }
    }
}

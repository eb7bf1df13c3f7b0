package fettle.engine;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * Reads all rule folders below a directory and checks that each name is used once.
 *
 * <p>Rules as files, with what their metadata say.
 *
 * @param files all DRL files, sorted by path
 * @param infos one for each folder, sorted by name
 */
record RuleFolders(List<DrlFile> files, List<RuleInfo> infos) {
    static final String PAGE = "page.md";
    private static final String LOOSE_TOPIC = "extra";

    /** Reads the project's own rules: each below its topic, each with its page. */
    static RuleFolders strict(Path root) {
        List<RuleProblem> problems = new ArrayList<>();
        List<RuleFolder> folders = new ArrayList<>();
        for (Map.Entry<Path, List<Path>> entry : drlByFolder(root, problems).entrySet()) {
            Path folder = entry.getKey();
            String shown = slashed(folder);
            if (root.relativize(folder).getNameCount() != 2 || folder.equals(root)) {
                problems.add(RuleProblem.of(shown, "Rules stand in <topic>/<rule-name>/ below "
                        + root.getFileName() + ", not here."));
            } else if (!Files.isRegularFile(folder.resolve(PAGE))) {
                problems.add(RuleProblem.of(shown, "The rule has no page; write " + PAGE + " beside its DRL."));
            } else {
                folder(root, folder, entry.getValue(), problems).ifPresent(folders::add);
            }
        }
        foldersWithoutRules(root, problems);
        return checked(folders, problems);
    }

    /** Reads rules that a user adds: folders of any depth with a page, or DRL files that stand alone. */
    static RuleFolders lenient(Path root) {
        List<RuleProblem> problems = new ArrayList<>();
        List<RuleFolder> folders = new ArrayList<>();
        for (Map.Entry<Path, List<Path>> entry : drlByFolder(root, problems).entrySet()) {
            Path folder = entry.getKey();
            if (Files.isRegularFile(folder.resolve(PAGE))) {
                folder(root, folder, entry.getValue(), problems).ifPresent(folders::add);
            } else {
                entry.getValue().forEach(drl -> loose(drl, problems).ifPresent(folders::add));
            }
        }
        if (folders.isEmpty() && problems.isEmpty()) {
            problems.add(RuleProblem.of(slashed(root), "There is no rule file (*.drl) here."));
        }
        return checked(folders, problems);
    }

    private static Map<Path, List<Path>> drlByFolder(Path root, List<RuleProblem> problems) {
        Map<Path, List<Path>> found = new TreeMap<>();
        if (!Files.isDirectory(root)) {
            problems.add(RuleProblem.of(slashed(root), "This is not a directory of rules."));
            return found;
        }
        try (Stream<Path> paths = Files.walk(root)) {
            paths.filter(path -> path.getFileName().toString().endsWith(".drl")).sorted()
                    .forEach(path -> found.computeIfAbsent(path.getParent(), parent -> new ArrayList<>()).add(path));
        } catch (IOException unreadable) {
            problems.add(RuleProblem.of(slashed(root), "The rules cannot be read: " + unreadable.getMessage() + "."));
        }
        return found;
    }

    /** A page without a rule is the other missing end. */
    private static void foldersWithoutRules(Path root, List<RuleProblem> problems) {
        if (!Files.isDirectory(root)) {
            return;
        }
        try (Stream<Path> paths = Files.walk(root)) {
            paths.filter(path -> path.getFileName().toString().equals(PAGE)).map(Path::getParent)
                    .filter(folder -> !holdsRules(folder))
                    .forEach(folder -> problems.add(RuleProblem.of(slashed(folder),
                            "The folder has a page but no rule; write " + folder.getFileName() + ".drl beside it.")));
        } catch (IOException unreadable) {
            problems.add(RuleProblem.of(slashed(root), "The rules cannot be read: " + unreadable.getMessage() + "."));
        }
    }

    private static boolean holdsRules(Path folder) {
        try (Stream<Path> inside = Files.list(folder)) {
            return inside.anyMatch(path -> path.getFileName().toString().endsWith(".drl"));
        } catch (IOException unreadable) {
            return false;
        }
    }

    private static Optional<RuleFolder> folder(Path root, Path folder, List<Path> drl, List<RuleProblem> problems) {
        Path page = folder.resolve(PAGE);
        String shownPage = slashed(page);
        Path above = folder.getParent();
        String topic = folder.equals(root) || above.equals(root) ? LOOSE_TOPIC : above.getFileName().toString();
        String name = folder.toAbsolutePath().normalize().getFileName().toString();
        List<DrlFile> files = files(drl, problems);
        try {
            RulePage read = RulePage.parse(shownPage, RuleText.read(page, shownPage));
            return files.isEmpty() ? Optional.empty()
                    : Optional.of(new RuleFolder(name, topic, slashed(folder), files, Optional.of(read)));
        } catch (RuleErrors errors) {
            problems.addAll(errors.problems());
            return Optional.empty();
        }
    }

    private static Optional<RuleFolder> loose(Path drl, List<RuleProblem> problems) {
        String file = drl.getFileName().toString();
        String name = file.substring(0, file.length() - ".drl".length());
        List<DrlFile> files = files(List.of(drl), problems);
        return files.isEmpty() ? Optional.empty()
                : Optional.of(new RuleFolder(name, LOOSE_TOPIC, slashed(drl), files, Optional.empty()));
    }

    private static List<DrlFile> files(List<Path> drl, List<RuleProblem> problems) {
        List<DrlFile> files = new ArrayList<>();
        for (Path path : drl) {
            try {
                files.add(DrlFile.read(path, slashed(path)));
            } catch (RuleErrors errors) {
                problems.addAll(errors.problems());
            }
        }
        return files;
    }

    private static RuleFolders checked(List<RuleFolder> folders, List<RuleProblem> problems) {
        unique(folders, problems);
        List<RuleInfo> infos = new ArrayList<>();
        folders.forEach(folder -> folder.info(problems).ifPresent(infos::add));
        if (!problems.isEmpty()) {
            throw new RuleErrors(problems);
        }
        infos.sort(Comparator.comparing(RuleInfo::name));
        return new RuleFolders(folders.stream().flatMap(folder -> folder.files().stream())
                .sorted(Comparator.comparing(DrlFile::shown)).toList(), List.copyOf(infos));
    }

    private static void unique(List<RuleFolder> folders, List<RuleProblem> problems) {
        Map<String, String> folderNames = new HashMap<>();
        Map<String, String> ruleNames = new HashMap<>();
        for (RuleFolder folder : folders) {
            String first = folderNames.putIfAbsent(folder.name(), folder.shown());
            if (first != null) {
                problems.add(RuleProblem.of(folder.shown(), "The name " + folder.name() + " is taken by " + first + "."));
            }
            for (DrlFile file : folder.files()) {
                for (DrlRule rule : file.rules()) {
                    String taken = ruleNames.putIfAbsent(rule.name(), file.shown() + ":" + rule.line());
                    if (taken != null) {
                        problems.add(new RuleProblem(file.shown(), rule.line(), 0,
                                "The rule \"" + rule.name() + "\" is already at " + taken + "; give one another name."));
                    }
                }
            }
        }
    }

    private static String slashed(Path path) {
        return path.toString().replace('\\', '/');
    }
}

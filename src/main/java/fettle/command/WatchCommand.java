package fettle.command;

import fettle.document.SavedFiles;
import fettle.engine.RuleBase;
import fettle.engine.RuleErrors;
import fettle.view.Report;
import fettle.view.TextView;
import fettle.view.WatchText;
import fettle.view.Wording;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code watch CATALOG}: lints again on every save, until it is ended. */
final class WatchCommand implements Command {

    static final String PURPOSE = "Lints a catalog, and again on every save, telling what is new and what is gone. Ctrl-C ends it.";

    /** Between two looks at the files, in milliseconds: soon enough to seem at once. Looking asks for names and times alone. */
    private static final long PAUSE = 200;

    @Override
    public CommandSpec spec() {
        CommandSpec spec = Options.command(
                "watch", PURPOSE, "fettle watch catalog/marrowdyke", "fettle watch catalog/marrowdyke --builds catalog/marrowdyke/builds");
        spec.addPositional(Options.catalog());
        spec.addOption(Options.builds());
        spec.addOption(Options.access());
        spec.addOption(Options.rules());
        spec.addOption(Options.color());
        return spec;
    }

    @Override
    public int run(ParseResult said, Streams streams) {
        Settings settings = Settings.of(said, streams);
        Watched watched = new Watched(said.matchedPositionalValue(0, Path.of("")), said.matchedOptionValue(Options.BUILDS, List.of()), settings.rules());
        if (watched.builds().contains(Path.of("-"))) {
            throw new NotChecked("standard input is never saved again; name the builds' files");
        }
        WatchText text = new WatchText(settings.style());
        SavedFiles state = watched.look();
        tell(watched.check(settings, settings.preparedRules(), streams), List.of(), List.of(), settings, text, streams);
        streams.err().println("fettle watch: waiting for the next save; Ctrl-C ends it.");
        streams.err().flush();
        try {
            // Whoever read the output may have gone; a stream tells only when asked.
            while (!streams.out().checkError()) {
                SavedFiles next = watched.afterSave(state);
                List<String> saved = next.since(state);
                List<String> deleted = next.goneSince(state);
                state = next;
                again(watched, saved, deleted, settings, text, streams);
            }
        } catch (InterruptedException ended) {
            Thread.currentThread().interrupt();
        }
        return ExitCode.FINE;
    }

    /** What ends other commands is only told here, since the next save may mend it. */
    private static void again(Watched watched, List<String> saved, List<String> deleted, Settings settings, WatchText text, Streams streams) {
        try {
            tell(watched.check(settings, settings.ruleBase(), streams), saved, deleted, settings, text, streams);
        } catch (NotChecked | RuleErrors wrong) {
            streams.err().println("fettle watch: " + TextView.harmless(wrong.getMessage()));
        }
        streams.err().flush();
    }

    private static void tell(Checked checked, List<String> saved, List<String> deleted, Settings settings, WatchText text, Streams streams) {
        Checkup checkup = checked.checkup();
        Report report = new Report("watch", checkup.reading().catalog().head(), checkup.findings());
        Wording wording = new Wording(checked.rules().index(), checkup.reading().catalog());
        new Delivery(Optional.empty(), streams).text(text.after(saved, deleted, report, wording, checkup.reading(), checkup.builds()));
    }

    private record Checked(Checkup checkup, RuleBase rules) {}

    private record Watched(Path catalog, List<Path> builds, Optional<Path> rules) {

        SavedFiles look() {
            SavedFiles files = SavedFiles.catalog(catalog);
            for (Path path : builds) {
                files = files.and(SavedFiles.documents(path));
            }
            return rules.isPresent() ? files.and(SavedFiles.all(rules.get())) : files;
        }

        /** Waits until something was saved and nothing more is being saved, since some programs write a file in several steps. */
        SavedFiles afterSave(SavedFiles before) throws InterruptedException {
            SavedFiles last = before;
            while (true) {
                Thread.sleep(PAUSE);
                SavedFiles now = look();
                if (now.equals(last) && !now.equals(before)) {
                    return now;
                }
                last = now;
            }
        }

        Checked check(Settings settings, RuleBase base, Streams streams) {
            return new Checked(Checkup.of(settings, base, catalog, builds, streams), base);
        }
    }
}

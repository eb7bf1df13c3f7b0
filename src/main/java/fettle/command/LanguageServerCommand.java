package fettle.command;

import fettle.editor.EditorServer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** {@code language-server}: findings, hover, definitions, completion and quick fixes for an editor, over standard input and output. */
final class LanguageServerCommand implements Command {

    static final String PURPOSE = "Speaks the Language Server Protocol on standard input and output, for editors: findings as one types, hover, go to definition,"
            + " completion and quick fixes. Editors start it; it is of no use by hand.";

    /** The protocol's library writes stack traces about strange messages, which are none of a reader's business; it must be held for that to last. */
    private static final Logger LIBRARY = Logger.getLogger("org.eclipse.lsp4j");

    @Override
    public CommandSpec spec() {
        CommandSpec spec = Options.command("language-server", PURPOSE, "fettle language-server", "fettle language-server catalog/marrowdyke");
        spec.addPositional(PositionalParamSpec.builder().index("0").arity("0..1").paramLabel("CATALOG").type(Path.class)
                .description("the catalog that all documents belong to (default: the nearest around each)").build());
        spec.addOption(OptionSpec.builder("--stdio").description("said by custom; standard input and output are used in any case").build());
        spec.addOption(Options.rules());
        return spec;
    }

    @Override
    public int run(ParseResult said, Streams streams) {
        Settings settings = Settings.of(said, streams);
        Optional<Path> catalog = Optional.ofNullable(said.matchedPositionalValue(0, null));
        catalog.filter(path -> !Files.isDirectory(path)).ifPresent(path -> {
            throw new NotChecked("there is no catalog at " + path + "; name the directory that holds its documents");
        });
        LIBRARY.setLevel(Level.OFF);
        streams.progress().end();
        boolean politely = EditorServer.serve(streams.in(), streams.out(), settings.preparedRules(), catalog, Version.text(), Fault::told);
        return politely ? ExitCode.FINE : ExitCode.FINDINGS;
    }
}

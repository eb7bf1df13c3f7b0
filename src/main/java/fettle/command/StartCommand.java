package fettle.command;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** {@code start DIR}: a small catalog that lints clean and shows each section of the format. */
final class StartCommand implements Command {

    static final String PURPOSE = "Writes a small invented catalog to start from, which shows each section of the format.";

    private static final List<String> FILES = List.of("catalog.yaml", "parts.yaml", "market.yaml", "judging.yaml", "builds/first-lantern.yaml");

    @Override
    public CommandSpec spec() {
        CommandSpec spec = Options.command("start", PURPOSE, "fettle start my-catalog", "fettle lint my-catalog");
        spec.addPositional(PositionalParamSpec.builder().index("0").paramLabel("DIR").type(Path.class).required(true)
                .description("a folder that is empty or not there yet").build());
        return spec;
    }

    @Override
    public boolean judges() {
        return false;
    }

    @Override
    public int run(ParseResult said, Streams streams) {
        Path folder = said.matchedPositionalValue(0, Path.of(""));
        try {
            refuseWhatIsInUse(folder);
            for (String name : FILES) {
                Path file = folder.resolve(name);
                Files.createDirectories(file.getParent());
                try (InputStream in = StartCommand.class.getResourceAsStream("/fettle/start/" + name)) {
                    if (in == null) {
                        throw new IllegalStateException("the program was packed without " + name);
                    }
                    Files.copy(in, file);
                }
            }
        } catch (IOException broken) {
            throw new NotChecked("cannot write to " + folder + ": " + Delivery.reason(broken) + "; name a folder where files can be written");
        }
        streams.out().println("wrote " + FILES.size() + " files to " + folder + "; next: fettle lint " + folder + ", and fettle validate " + folder + " " + folder.resolve("builds"));
        return ExitCode.FINE;
    }

    private static void refuseWhatIsInUse(Path folder) throws IOException {
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw new NotChecked(folder + " is a file; name a folder that is empty or not there yet");
        }
        if (Files.isDirectory(folder)) {
            try (Stream<Path> held = Files.list(folder)) {
                if (held.findAny().isPresent()) {
                    throw new NotChecked(folder + " is not empty, and nothing in it is to be overwritten; name a folder that is empty or not there yet");
                }
            }
        }
    }
}

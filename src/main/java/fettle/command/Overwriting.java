package fettle.command;

import fettle.document.Documents;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import picocli.CommandLine.ParseResult;

/** Keeps output from being written over what a command reads, or to where it would be read the next time. */
final class Overwriting {

    private Overwriting() {}

    /** Refuses an output file that can't be one, or that is one of the documents that are named, or would be one of those in a folder of them. */
    static void refuse(ParseResult said) {
        Path output = said.matchedOptionValue(Options.OUTPUT, null);
        if (output == null) {
            return;
        }
        if (output.toString().isEmpty()) {
            throw new NotChecked("-o names no file to write to");
        }
        Delivery.obstacle(output).ifPresent(why -> {
            throw Delivery.notWritten(output, why);
        });
        if (Files.exists(output) && !Files.isRegularFile(output)) {
            return;
        }
        Stream.concat(said.matchedPositionals().stream(), said.matchedOptions().stream().filter(option -> option.longestName().equals(Options.BUILDS)))
                .flatMap(EmptyPaths::paths)
                .filter(input -> holds(input, output))
                .findFirst()
                .ifPresent(input -> {
                    throw new NotChecked(Files.exists(output)
                            ? "what is read from " + input + " would be written over: " + output + " is there already; name another file for the output"
                            : output + " would be read with " + input + " the next time; name a file elsewhere for the output");
                });
    }

    private static boolean holds(Path input, Path output) {
        try {
            Path read = input.toRealPath();
            Path written = Files.exists(output) ? output.toRealPath() : output.toAbsolutePath().getParent().toRealPath().resolve(output.getFileName());
            return read.equals(written) || written.startsWith(read) && Documents.hasDocumentName(written);
        } catch (IOException notThere) {
            // Whoever reads it says so.
            return false;
        }
    }
}

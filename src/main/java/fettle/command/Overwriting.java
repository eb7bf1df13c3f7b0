package fettle.command;

import fettle.document.Documents;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.stream.Stream;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.ParseResult;

/** Keeps output from being written over what a command reads. */
final class Overwriting {

    private Overwriting() {}

    /** Refuses an output file that is there and is one of the documents that are named, or stands in a folder of them. */
    static void refuse(ParseResult said) {
        Path output = said.matchedOptionValue(Options.OUTPUT, null);
        if (output == null || !Files.isRegularFile(output)) {
            return;
        }
        Stream.concat(said.matchedPositionals().stream(), said.matchedOptions().stream().filter(option -> option.longestName().equals(Options.BUILDS)))
                .flatMap(Overwriting::paths)
                .filter(input -> holds(input, output))
                .findFirst()
                .ifPresent(input -> {
                    throw new NotChecked("what is read from " + input + " would be written over: " + output + " is there already; name another file for the output");
                });
    }

    private static Stream<Path> paths(ArgSpec argument) {
        Object value = argument.getValue();
        Stream<?> values = value instanceof Collection<?> several ? several.stream() : Stream.ofNullable(value);
        return values.filter(Path.class::isInstance).map(Path.class::cast);
    }

    private static boolean holds(Path input, Path output) {
        try {
            Path read = input.toRealPath();
            Path written = output.toRealPath();
            return read.equals(written) || written.startsWith(read) && Documents.hasDocumentName(written);
        } catch (IOException notThere) {
            // Whoever reads it says so.
            return false;
        }
    }
}

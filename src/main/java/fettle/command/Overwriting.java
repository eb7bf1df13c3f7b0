package fettle.command;

import fettle.document.Documents;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileVisitOption;
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
        if (output.toString().equals("-")) {
            throw new NotChecked("-o takes a file, and - is none; write ./- for a file of that name");
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

    /** Whether a file has several names, as far as the system tells. */
    private static boolean linked(Path file) throws IOException {
        return Files.exists(file) && Files.getFileStore(file).supportsFileAttributeView("unix") && (int) Files.getAttribute(file, "unix:nlink") > 1;
    }

    /** Whether one of the documents that are read is the same file under another name. */
    private static boolean holdsLink(Path read, Path written) throws IOException {
        try (Stream<Path> files = Files.walk(read, FileVisitOption.FOLLOW_LINKS)) {
            return files.anyMatch(file -> {
                try {
                    return Files.isSameFile(file, written);
                } catch (IOException gone) {
                    return false;
                }
            });
        } catch (UncheckedIOException notThere) {
            throw notThere.getCause();
        }
    }

    private static boolean holds(Path input, Path output) {
        try {
            Path read = input.toRealPath();
            Path written = Files.exists(output) ? output.toRealPath() : output.toAbsolutePath().getParent().toRealPath().resolve(output.getFileName());
            return read.equals(written) || written.startsWith(read) && Documents.hasDocumentName(written) || linked(written) && holdsLink(read, written);
        } catch (IOException notThere) {
            // Whoever reads it says so.
            return false;
        }
    }
}

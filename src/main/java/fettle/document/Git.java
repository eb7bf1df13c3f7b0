package fettle.document;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;

/**
 * Asks the {@code git} program of the system, in a directory. Only ever to read: nothing is locked or written, no remote is asked for what a partial
 * clone lacks, and nobody is prompted.
 */
final class Git {
    private static final List<String> PROGRAM = List.of("git", "--no-pager", "-c", "protocol.allow=never");
    private static final Map<String, String> ENVIRONMENT =
            Map.of("GIT_OPTIONAL_LOCKS", "0", "GIT_TERMINAL_PROMPT", "0", "GIT_NO_LAZY_FETCH", "1", "LC_ALL", "C");

    private final Path directory;

    Git(Path directory) {
        this.directory = directory;
    }

    /** What one call came to: its exit code, its output, and what it complained of. */
    record Answer(int exitCode, byte[] output, String complaint) {
        boolean fine() {
            return exitCode == 0;
        }

        /** The output as one line. */
        String line() {
            return new String(output, StandardCharsets.UTF_8).strip();
        }
    }

    Answer ask(List<String> arguments) {
        return ask(arguments, new byte[0]);
    }

    /** Runs git with some input; it is fed while its output is read, so that neither waits for the other. */
    Answer ask(List<String> arguments, byte[] input) {
        List<String> command = new ArrayList<>(PROGRAM);
        command.addAll(arguments);
        ProcessBuilder builder = new ProcessBuilder(command).directory(directory.toAbsolutePath().toFile());
        builder.environment().putAll(ENVIRONMENT);
        Process process;
        try {
            process = builder.start();
        } catch (IOException absent) {
            throw new RevisionUnreadable("the program git is needed to read a revision, and cannot be started; install it, or name a folder instead");
        }
        CompletableFuture<Void> fed = CompletableFuture.runAsync(() -> feed(process.getOutputStream(), input));
        CompletableFuture<byte[]> complaint = CompletableFuture.supplyAsync(() -> drained(process.getErrorStream()));
        byte[] output = drained(process.getInputStream());
        try {
            fed.join();
            return new Answer(process.waitFor(), output, new String(complaint.join(), StandardCharsets.UTF_8).strip());
        } catch (InterruptedException stopped) {
            process.destroy();
            Thread.currentThread().interrupt();
            throw new RevisionUnreadable("reading the revision was interrupted");
        }
    }

    /** A program that ends without reading all of its input is heard by its exit code. */
    private static void feed(OutputStream stream, byte[] input) {
        try (stream) {
            stream.write(input);
        } catch (IOException closed) {
            return;
        }
    }

    private static byte[] drained(InputStream stream) {
        try (stream) {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            stream.transferTo(bytes);
            return bytes.toByteArray();
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }
}

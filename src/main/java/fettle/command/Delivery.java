package fettle.command;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import tools.jackson.core.JacksonException;

/** Brings output to its file, or to standard output; a reader that has gone away is no error. */
record Delivery(Optional<Path> file, Streams streams) {

    /** Writes to a stream, which need not be closed. */
    interface Writing {
        void to(OutputStream out);
    }

    void text(String text) {
        write(out -> {
            try {
                out.write(text.getBytes(StandardCharsets.UTF_8));
            } catch (IOException broken) {
                throw new UncheckedIOException(broken);
            }
        });
    }

    void write(Writing writing) {
        if (file.isEmpty()) {
            streams.progress().end();
            // A print stream keeps quiet about a closed pipe, which is what "fettle lint … | head" wants.
            writing.to(streams.out());
            streams.out().flush();
            return;
        }
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file.get()))) {
            writing.to(out);
        } catch (IOException broken) {
            throw notWritten(broken);
        } catch (UncheckedIOException broken) {
            throw notWritten(broken.getCause());
        } catch (JacksonException broken) {
            throw notWritten(broken.getCause() instanceof IOException cause ? cause : new IOException(broken.getOriginalMessage()));
        }
    }

    private NotChecked notWritten(IOException cause) {
        return notWritten(file.get(), obstacle(file.get()).orElseGet(() -> reason(cause)));
    }

    /** Why nothing could be written, in words that follow a colon; the message of many a cause is no more than the file's name. */
    static String reason(IOException cause) {
        if (cause instanceof AccessDeniedException) {
            return "writing there is not permitted";
        }
        String said = cause instanceof FileSystemException refused ? refused.getReason() : cause.getMessage();
        return said == null || said.isBlank() ? "the system refuses it, and gives no reason" : said;
    }

    /** Why there can be no such file, as far as its place tells. */
    static Optional<String> obstacle(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        if (folder == null || Files.isDirectory(file)) {
            return Optional.of("it is a folder");
        }
        return Files.isDirectory(folder) ? Optional.empty() : Optional.of("there is no such folder");
    }

    static NotChecked notWritten(Path file, String why) {
        return new NotChecked("cannot write " + file + ": " + why);
    }
}

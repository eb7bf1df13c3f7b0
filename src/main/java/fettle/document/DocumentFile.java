package fettle.document;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Reads one document from a file or a stream, within bounds. Nothing but an ordinary file is ever opened: a pipe could wait for ever. */
final class DocumentFile {
    /** The most bytes that one document may have, and all documents of a catalog, or all builds, together: some 75,000 parts of one line each, which are gone through in two minutes. */
    static final int MOST_BYTES = 16 * 1024 * 1024;

    private DocumentFile() {}

    static Document read(String shown, Path file) {
        try {
            BasicFileAttributes attributes = Files.readAttributes(file, BasicFileAttributes.class);
            if (attributes.isDirectory()) {
                return unreadable(shown, "this is a folder, but a file is expected", "name a file in it");
            } else if (!attributes.isRegularFile()) {
                return unreadable(shown, "this is not an ordinary file", "put the document in a file; a build may be given on standard input as -");
            } else if (attributes.size() > MOST_BYTES) {
                return tooLarge(shown);
            }
            try (InputStream stream = Files.newInputStream(file)) {
                return read(shown, stream);
            }
        } catch (IOException cause) {
            return refused(shown, file, cause);
        }
    }

    static Document read(String shown, InputStream stream) throws IOException {
        return read(shown, stream.readNBytes(MOST_BYTES + 1));
    }

    static Document read(String shown, byte[] bytes) {
        if (bytes.length > MOST_BYTES) {
            return tooLarge(shown);
        }
        FileText content = FileText.of(bytes);
        if (content instanceof FileText.Refused refused) {
            Origin origin = new Origin(shown, refused.place().line(), refused.place().column(), "");
            return unreadable(origin, refused.what(), refused.remedy());
        }
        String text = ((FileText.Readable) content).text();
        return isJson(shown, text) ? JsonReader.read(shown, text) : YamlReader.read(shown, text);
    }

    /** The name decides; without a telling name, what opens like a JSON object is JSON. */
    private static boolean isJson(String shown, String text) {
        String name = shown.toLowerCase(Locale.ROOT);
        if (name.endsWith(".json")) {
            return true;
        }
        return !isYamlName(name) && text.stripLeading().startsWith("{");
    }

    /** Whether a file of this name is a document. What begins with {@code .#} is the mark by which an editor keeps a file to itself while its text is not saved. */
    static boolean hasDocumentName(String name) {
        String lower = name.toLowerCase(Locale.ROOT);
        return !name.startsWith(".#") && (lower.endsWith(".json") || isYamlName(lower));
    }

    /** Whether a file of this name is a YAML document. */
    static boolean isYaml(String name) {
        return isYamlName(name.toLowerCase(Locale.ROOT));
    }

    private static boolean isYamlName(String lower) {
        return lower.endsWith(".yaml") || lower.endsWith(".yml");
    }

    /** Words why a file or folder could not be had. */
    static Document refused(String shown, Path path, IOException cause) {
        if (cause instanceof AccessDeniedException) {
            return unreadable(shown, "reading it is not permitted", "give the right to read it to whoever runs this");
        } else if (Files.isSymbolicLink(path)) {
            return unreadable(shown, "this link leads nowhere, or round in a circle", "mend the link, or delete it");
        } else if (cause instanceof NoSuchFileException || !Files.exists(path, LinkOption.NOFOLLOW_LINKS)) {
            return unreadable(shown, "there is no such file or folder", "check the name");
        }
        return unreadable(shown, "it cannot be read: " + Words.shortened(reason(cause)), "try again, or copy it elsewhere");
    }

    private static String reason(IOException cause) {
        return Optional.ofNullable(cause.getMessage()).orElse("the system gives no reason");
    }

    static Document unreadable(String shown, String what, String remedy) {
        return unreadable(Origin.startOf(shown), what, remedy);
    }

    private static Document unreadable(Origin origin, String what, String remedy) {
        return new Document(origin.file(), Optional.empty(), List.of(new DocumentProblem(origin, what, remedy)));
    }

    static Document tooLarge(String shown) {
        return unreadable(shown, "the document is larger than " + MOST_BYTES / (1024 * 1024) + " MiB", "take it away if it does not belong here, or check less at a time");
    }

    /** What is not read since too much has been before it. */
    static Document oneTooMany(String shown) {
        return unreadable(shown, "with the documents before it, by name, this one comes to more than " + MOST_BYTES / (1024 * 1024) + " MiB, so that it was not read",
                "take away what does not belong here, or check less at a time");
    }

    /** How many bytes reading a file may take; none where it is not to be had. */
    static long size(Path file) {
        try {
            return Files.size(file);
        } catch (IOException cause) {
            // Reading it will say so.
            return 0;
        }
    }
}

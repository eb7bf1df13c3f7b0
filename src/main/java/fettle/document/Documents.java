package fettle.document;

import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/** Reads catalogs and builds from disk: what can be read is read, and each thing that cannot is a problem of its own. */
public final class Documents {
    /** The name below which a catalog's folder holds builds rather than catalog documents. */
    static final String BUILDS_FOLDER = "builds";

    private static final Path STANDARD_INPUT = Path.of("-");

    private Documents() {}

    /**
     * Reads every {@code *.json}, {@code *.yaml} and {@code *.yml} below a directory, except below a folder named
     * {@code builds}. A directory that is missing, that may not be listed or that holds no document gives a document with
     * that problem, so that the set is never empty.
     */
    public static DocumentSet catalog(Path directory) {
        return catalog(directory, Map.of());
    }

    /**
     * Reads the same, with what an editor holds of some files in place of what they hold on disk, and with those of its files that were never saved; {@code unsaved} is keyed
     * by real paths.
     */
    public static DocumentSet catalog(Path directory, Map<Path, byte[]> unsaved) {
        if (Files.exists(directory) && !Files.isDirectory(directory)) {
            return new DocumentSet(List.of(DocumentFile.unreadable(DocumentSearch.shown(directory),
                    "a catalog is a folder, but this is a file", "name the folder that holds the catalog's files")));
        }
        DocumentSearch search = new DocumentSearch(name -> !name.equals(BUILDS_FOLDER), unsaved, false);
        search.take(directory, file -> file.startsWith(directory) && Files.notExists(file) && hasDocumentName(file));
        return search.found();
    }

    /**
     * Reads build files: each path is a file, a directory of files, or {@code -} for standard input, which is then read to its
     * end but not closed. What is named twice is read once.
     */
    public static DocumentSet builds(List<Path> filesOrDirectories, InputStream standardInput) {
        DocumentSearch search = new DocumentSearch(name -> true, Map.of(), true);
        for (Path path : filesOrDirectories) {
            if (path.equals(STANDARD_INPUT)) {
                search.take(standardInput);
            } else {
                search.take(path);
            }
        }
        return search.found();
    }

    /** Whether a file of this name is read where it stands in a folder of documents. */
    public static boolean hasDocumentName(Path file) {
        return DocumentFile.hasDocumentName(file.getFileName().toString());
    }

    /** Whether a file of this name is read as YAML. */
    public static boolean isYaml(Path file) {
        return DocumentFile.isYaml(file.getFileName().toString());
    }

    /** Reads one document that is at hand already; the file's name tells JSON from YAML. */
    public static Document content(String file, byte[] bytes) {
        return DocumentFile.read(file, bytes);
    }
}

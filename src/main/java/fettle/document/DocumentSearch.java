package fettle.document;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.Supplier;

/**
 * Finds and reads documents, whatever the order in which the system lists them. Links are followed, but nothing is read twice. Files are found first and then
 * read side by side, since reading is much of what a short run does.
 */
final class DocumentSearch {
    private static final String STANDARD_INPUT = "-";

    private final Predicate<String> entersFolder;
    private final Map<Path, byte[]> unsaved;
    private final boolean amongBuilds;
    private final List<Find> finds = new ArrayList<>();
    private final Set<Path> met = new HashSet<>();
    private final Set<Path> above = new HashSet<>();
    private boolean metStandardInput;
    private Path top = Path.of("");

    /** How many documents, problems and folders entered before have been come upon, read or not. */
    private int seen;

    /**
     * What was come upon.
     *
     * @param shown its name as people are shown it
     * @param name what the document is called
     * @param bytes how many there are to read
     */
    private record Find(String shown, String name, long bytes, Supplier<Document> read) {}

    /**
     * @param entersFolder whether to look into a folder of this name
     * @param unsaved what to read in place of files, by their real paths
     * @param amongBuilds whether builds are looked for, and no catalog
     */
    DocumentSearch(Predicate<String> entersFolder, Map<Path, byte[]> unsaved, boolean amongBuilds) {
        this.entersFolder = entersFolder;
        this.unsaved = unsaved;
        this.amongBuilds = amongBuilds;
    }

    /** Reads everything found, sorted by name; once there is more than can be gone through, what comes later by name is told of unread. */
    DocumentSet found() {
        finds.sort(Comparator.comparing(Find::shown));
        List<Supplier<Document>> documents = new ArrayList<>();
        long before = 0;
        for (Find find : finds) {
            boolean fits = before + find.bytes <= DocumentFile.MOST_BYTES;
            // What is too large by itself says so, and takes nothing from the others.
            Supplier<Document> document = fits || find.bytes > DocumentFile.MOST_BYTES ? find.read : () -> DocumentFile.oneTooMany(find.shown);
            documents.add(() -> document.get().named(find.name));
            before += fits ? find.bytes : 0;
        }
        return new DocumentSet(documents.parallelStream().map(Supplier::get).sorted(Comparator.comparing(Document::file)).toList());
    }

    /** Takes one file or, if it is one, the documents of a folder; a folder without any is a problem. */
    void take(Path path) {
        take(path, file -> false);
    }

    /** Takes the same, and those documents that stand in no file yet and are {@code wanted}. */
    void take(Path path, Predicate<Path> wanted) {
        top = path;
        if (!Files.isDirectory(path)) {
            takeFile(shown(path), path);
            return;
        }
        int before = seen;
        takeFolder(shown(path), path);
        unsaved.keySet().stream().filter(wanted).forEach(this::takeUnsaved);
        if (seen == before) {
            add(DocumentFile.unreadable(shown(path), "no document is in this folder",
                    "put files that end in .json, .yaml or .yml there, or name another folder"));
        }
    }

    /** Takes standard input as one document, once. */
    void take(InputStream standardInput) {
        if (metStandardInput) {
            return;
        }
        metStandardInput = true;
        try {
            Document read = DocumentFile.read(STANDARD_INPUT, standardInput);
            finds.add(new Find(STANDARD_INPUT, STANDARD_INPUT, 0, () -> read));
        } catch (IOException cause) {
            finds.add(new Find(STANDARD_INPUT, STANDARD_INPUT, 0, () -> DocumentFile.unreadable(STANDARD_INPUT, "standard input cannot be read", "name a file")));
        }
    }

    private void takeFile(String shown, Path file) {
        seen++;
        try {
            Path real = file.toRealPath();
            if (met.add(real)) {
                byte[] typed = unsaved.get(real);
                finds.add(new Find(shown, name(shown), typed == null ? DocumentFile.size(file) : typed.length,
                        () -> typed == null ? DocumentFile.read(shown, file) : DocumentFile.read(shown, typed)));
            }
        } catch (IOException cause) {
            add(DocumentFile.refused(shown, file, cause));
        }
    }

    private void takeUnsaved(Path file) {
        seen++;
        byte[] typed = unsaved.get(file);
        finds.add(new Find(shown(file), name(shown(file)), typed.length, () -> DocumentFile.read(shown(file), typed)));
    }

    private void add(Document document) {
        finds.add(new Find(document.file(), name(document.file()), 0, () -> document));
    }

    /** What a document is called, however the folder that is looked through, or the file, was named. */
    private String name(String shown) {
        String folder = child(shown(top), "");
        boolean within = shown.startsWith(folder);
        String inside = within ? shown.substring(folder.length()) : "";
        if (within && !amongBuilds) {
            return inside;
        }
        String whole = shown(top.toAbsolutePath().normalize());
        String name = Document.nameOf(within ? child(whole, inside) : whole);
        return !within || name.contains("/") ? name : inside;
    }

    private void takeFolder(String shown, Path folder) {
        try {
            Path real = folder.toRealPath();
            if (above.contains(real)) {
                seen++;
                add(DocumentFile.unreadable(shown, "this link leads back to a folder above it", "delete the link"));
            } else if (met.add(real)) {
                above.add(real);
                try {
                    takeEntries(shown, folder);
                } finally {
                    above.remove(real);
                }
            } else {
                seen++;
            }
        } catch (IOException cause) {
            seen++;
            add(DocumentFile.refused(shown, folder, cause));
        }
    }

    private void takeEntries(String shown, Path folder) throws IOException {
        for (Path entry : entries(folder)) {
            String name = entry.getFileName().toString();
            String shownEntry = child(shown, name);
            if (Files.isDirectory(entry)) {
                if (entersFolder.test(name)) {
                    takeFolder(shownEntry, entry);
                }
            } else if (DocumentFile.hasDocumentName(name)) {
                takeFile(shownEntry, entry);
            }
        }
    }

    private static List<Path> entries(Path folder) throws IOException {
        List<Path> entries = new ArrayList<>();
        try (DirectoryStream<Path> listed = Files.newDirectoryStream(folder)) {
            listed.forEach(entries::add);
        } catch (DirectoryIteratorException cause) {
            throw cause.getCause();
        }
        entries.sort(Comparator.naturalOrder());
        return entries;
    }

    /** A path as people are shown it. */
    static String shown(Path path) {
        return path.toString().replace(File.separatorChar, '/');
    }

    private static String child(String folder, String name) {
        return folder.isEmpty() || folder.endsWith("/") ? folder + name : folder + "/" + name;
    }
}

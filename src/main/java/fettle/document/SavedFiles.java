package fettle.document;

import java.io.IOException;
import java.nio.file.FileVisitOption;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.util.EnumSet;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Predicate;

/** How files stood on disk at one time, to be asked later which of them were saved since. */
public record SavedFiles(SortedMap<String, Stamp> stamps) {

    /** What tells a file from its next version without reading it. */
    public record Stamp(FileTime saved, long bytes) {}

    /** The documents of a catalog. */
    public static SavedFiles catalog(Path directory) {
        return below(directory, name -> !name.equals(Documents.BUILDS_FOLDER), DocumentFile::hasDocumentName);
    }

    /** One file, or the documents of a folder. */
    public static SavedFiles documents(Path fileOrDirectory) {
        return below(fileOrDirectory, name -> true, DocumentFile::hasDocumentName);
    }

    /** Every file below a folder. */
    public static SavedFiles all(Path directory) {
        return below(directory, name -> true, name -> true);
    }

    /** These and others. */
    public SavedFiles and(SavedFiles others) {
        SortedMap<String, Stamp> both = new TreeMap<>(stamps);
        both.putAll(others.stamps);
        return new SavedFiles(both);
    }

    /** The files that are new or other, by name. */
    public List<String> since(SavedFiles before) {
        return stamps.keySet().stream().filter(name -> !stamps.get(name).equals(before.stamps.get(name))).toList();
    }

    /** The files that are no longer there, by name. */
    public List<String> goneSince(SavedFiles before) {
        return before.stamps.keySet().stream().filter(name -> !stamps.containsKey(name)).toList();
    }

    private static SavedFiles below(Path root, Predicate<String> enters, Predicate<String> takes) {
        SortedMap<String, Stamp> stamps = new TreeMap<>();
        SimpleFileVisitor<Path> visitor = new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
                return folder.equals(root) || enters.test(folder.getFileName().toString()) ? FileVisitResult.CONTINUE : FileVisitResult.SKIP_SUBTREE;
            }

            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
                if (file.equals(root) || takes.test(file.getFileName().toString())) {
                    stamps.put(DocumentSearch.shown(file), new Stamp(attributes.lastModifiedTime(), attributes.size()));
                }
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFileFailed(Path file, IOException gone) {
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult postVisitDirectory(Path folder, IOException broken) {
                return FileVisitResult.CONTINUE;
            }
        };
        try {
            Files.walkFileTree(root, EnumSet.of(FileVisitOption.FOLLOW_LINKS), Integer.MAX_VALUE, visitor);
        } catch (IOException gone) {
            return new SavedFiles(stamps);
        }
        return new SavedFiles(stamps);
    }
}

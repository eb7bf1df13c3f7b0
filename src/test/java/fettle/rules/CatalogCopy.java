package fettle.rules;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Copies a catalog's folder, so that a test can change it. */
final class CatalogCopy {

    private CatalogCopy() {}

    /** The copy, a folder of the same name below {@code scratch}. */
    static Path of(Path folder, Path scratch) throws IOException {
        Path copy = Files.createTempDirectory(scratch, "copy").resolve(folder.getFileName().toString());
        List<Path> files;
        try (Stream<Path> inside = Files.walk(folder)) {
            files = inside.filter(Files::isRegularFile).toList();
        }
        for (Path file : files) {
            Path target = copy.resolve(folder.relativize(file).toString());
            Files.createDirectories(target.getParent());
            Files.copy(file, target);
        }
        return copy;
    }

    /** Removes a folder with all that is in it. */
    static void remove(Path folder) throws IOException {
        List<Path> inside;
        try (Stream<Path> paths = Files.walk(folder)) {
            inside = paths.sorted(Comparator.reverseOrder()).toList();
        }
        for (Path path : inside) {
            Files.delete(path);
        }
    }
}

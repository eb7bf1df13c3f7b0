package fettle.engine;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/**
 * Keeps compiled rules of a user's between runs, by the digest of their content.
 *
 * <p>A folder with one archive for each digest. A cache that cannot be read or written, or that others could write to, is
 * not used: the rules are then compiled again. What is in it runs as code.
 */
final class RuleCache {
    private static final int KEPT = 20;
    private static final Set<PosixFilePermission> OWN = PosixFilePermissions.fromString("rwx------");

    private final Optional<Path> folder;

    RuleCache(Optional<Path> folder) {
        this.folder = folder;
    }

    /** The cache of whoever runs the program: below {@code XDG_CACHE_HOME}, or {@code .cache} in their home. */
    static RuleCache ofUser() {
        String named = System.getenv("XDG_CACHE_HOME");
        Path caches = named != null && Path.of(named).isAbsolute() ? Path.of(named)
                : Path.of(System.getProperty("user.home", ""), ".cache");
        return new RuleCache(caches.isAbsolute() ? Optional.of(caches.resolve("fettle").resolve("rules")) : Optional.empty());
    }

    /** The kept rules of this digest, or else those that {@code compile} makes, which are then kept. */
    CompiledRules get(String digest, Supplier<CompiledRules> compile) {
        Optional<Path> archive = folder.filter(RuleCache::ready).map(path -> path.resolve(digest + ".zip"));
        Optional<CompiledRules> kept = archive.filter(Files::isRegularFile).flatMap(path -> read(path, digest));
        if (kept.isPresent()) {
            return kept.get();
        }
        CompiledRules compiled = compile.get();
        archive.ifPresent(path -> keep(compiled, path));
        return compiled;
    }

    private static boolean ready(Path folder) {
        try {
            boolean posix = FileSystems.getDefault().supportedFileAttributeViews().contains("posix");
            if (!posix) {
                Files.createDirectories(folder);
                return true;
            }
            Files.createDirectories(folder, PosixFilePermissions.asFileAttribute(OWN));
            Set<PosixFilePermission> rights = Files.getPosixFilePermissions(folder);
            return !rights.contains(PosixFilePermission.GROUP_WRITE) && !rights.contains(PosixFilePermission.OTHERS_WRITE);
        } catch (IOException | SecurityException unusable) {
            return false;
        }
    }

    private static Optional<CompiledRules> read(Path archive, String digest) {
        SortedMap<String, byte[]> classes = new TreeMap<>();
        RuleIndex index = null;
        try (ZipInputStream zip = new ZipInputStream(Files.newInputStream(archive))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                byte[] content = zip.readAllBytes();
                if (entry.getName().equals(RuleIndex.RESOURCE)) {
                    index = RuleIndexFormat.read(new ByteArrayInputStream(content));
                } else {
                    classes.put(entry.getName(), content);
                }
            }
            Files.setLastModifiedTime(archive, FileTime.from(Instant.now()));
        } catch (IOException broken) {
            return Optional.empty();
        }
        return index == null || !index.digest().equals(digest) ? Optional.empty()
                : Optional.of(new CompiledRules(classes, index));
    }

    /** Written beside and moved, so that nobody ever reads half an archive. */
    private static void keep(CompiledRules compiled, Path archive) {
        try {
            Path draft = Files.createTempFile(archive.getParent(), "draft", ".tmp");
            try {
                Files.write(draft, zipped(compiled));
                move(draft, archive);
            } finally {
                Files.deleteIfExists(draft);
            }
            forgetOldest(archive.getParent());
        } catch (IOException unwritable) {
            // The rules are compiled and can be used; the next run compiles them again.
            return;
        }
    }

    private static void move(Path draft, Path archive) throws IOException {
        try {
            Files.move(draft, archive, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException plainly) {
            Files.move(draft, archive, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private static byte[] zipped(CompiledRules compiled) throws IOException {
        ByteArrayOutputStream index = new ByteArrayOutputStream();
        RuleIndexFormat.write(compiled.index(), index);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (Map.Entry<String, byte[]> entry : compiled.classes().entrySet()) {
                add(zip, entry.getKey(), entry.getValue());
            }
            // Last, so that an archive that was cut short has no index and is not used.
            add(zip, RuleIndex.RESOURCE, index.toByteArray());
        }
        return bytes.toByteArray();
    }

    private static void add(ZipOutputStream zip, String name, byte[] content) throws IOException {
        zip.putNextEntry(new ZipEntry(name));
        zip.write(content);
        zip.closeEntry();
    }

    private static void forgetOldest(Path folder) throws IOException {
        try (Stream<Path> archives = Files.list(folder)) {
            for (Path old : archives.filter(path -> path.toString().endsWith(".zip"))
                    .sorted(Comparator.comparing(RuleCache::lastUse).reversed()).skip(KEPT).toList()) {
                Files.deleteIfExists(old);
            }
        }
    }

    private static FileTime lastUse(Path archive) {
        try {
            return Files.getLastModifiedTime(archive);
        } catch (IOException gone) {
            return FileTime.fromMillis(0);
        }
    }
}

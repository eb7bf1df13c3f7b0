package fettle.engine;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * A name for content: the same for the same content, and different for any other.
 *
 * <p>Sums up named contents in the order in which they are added.
 */
final class Digest {
    private final MessageDigest sum;

    Digest() {
        try {
            sum = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException absent) {
            throw new IllegalStateException("Every Java platform has SHA-256.", absent);
        }
    }

    Digest add(String name, byte[] content) {
        // Lengths keep "ab" + "c" apart from "a" + "bc".
        byte[] named = (name.length() + ":" + name + content.length + ":").getBytes(StandardCharsets.UTF_8);
        sum.update(named);
        sum.update(content);
        return this;
    }

    Digest add(String name, String content) {
        return add(name, content.getBytes(StandardCharsets.UTF_8));
    }

    /** Adds the files below a directory, by their paths from there; nothing where it does not exist. */
    Digest addTree(Path root, Predicate<String> wanted) throws IOException {
        if (!Files.isDirectory(root)) {
            return this;
        }
        List<Path> files;
        try (Stream<Path> paths = Files.walk(root)) {
            files = paths.filter(Files::isRegularFile).sorted().toList();
        }
        for (Path file : files) {
            String name = root.relativize(file).toString().replace('\\', '/');
            if (wanted.test(name)) {
                add(name, Files.readAllBytes(file));
            }
        }
        return this;
    }

    String hex() {
        return HexFormat.of().formatHex(sum.digest());
    }
}

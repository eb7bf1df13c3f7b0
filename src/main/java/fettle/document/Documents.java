package fettle.document;

import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;

/** Reads catalogs and builds from disk: what can be read is read, and each thing that cannot is a problem of its own. */
public final class Documents {
    private Documents() {}

    /** Reads every {@code *.json}, {@code *.yaml} and {@code *.yml} below a directory, except below a folder named {@code builds}. */
    public static DocumentSet catalog(Path directory) {
        throw new UnsupportedOperationException("reading is not there yet");
    }

    /** Reads build files: each path is a file, a directory of files, or {@code -} for standard input. */
    public static DocumentSet builds(List<Path> filesOrDirectories, InputStream standardInput) {
        throw new UnsupportedOperationException("reading is not there yet");
    }
}

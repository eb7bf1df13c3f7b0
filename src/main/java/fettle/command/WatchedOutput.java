package fettle.command;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Optional;

/** Remembers why writing failed first, which a print stream keeps to itself. */
final class WatchedOutput extends FilterOutputStream {

    private Optional<IOException> failure = Optional.empty();

    WatchedOutput(OutputStream out) {
        super(out);
    }

    /** Why something could not be written; empty where all was, or where the reader had enough and went away. */
    Optional<String> failure() {
        return failure.map(IOException::getMessage).filter(why -> !why.contains("Broken pipe") && !why.contains("pipe is being closed"));
    }

    @Override
    public void write(int single) throws IOException {
        write(new byte[] {(byte) single}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int from, int count) throws IOException {
        try {
            out.write(bytes, from, count);
        } catch (IOException broken) {
            failure = failure.or(() -> Optional.of(broken));
            throw broken;
        }
    }
}

package fettle.document;

import java.util.Comparator;
import java.util.Objects;

/**
 * Where something stands in what was read.
 *
 * @param file the file as people named it, with forward slashes; {@code -} for standard input
 * @param line counted from 1; 1 where the document as a whole is meant
 * @param column counted from 1, in characters (a character outside the basic plane counts once)
 * @param pointer the place as a JSON pointer (RFC 6901); empty for the whole document
 */
public record Origin(String file, int line, int column, String pointer) implements Comparable<Origin> {
    private static final Comparator<Origin> IN_READING_ORDER =
            Comparator.comparing(Origin::file)
                    .thenComparingInt(Origin::line)
                    .thenComparingInt(Origin::column)
                    .thenComparing(Origin::pointer);

    public Origin {
        Objects.requireNonNull(file);
        Objects.requireNonNull(pointer);
        if (line < 1 || column < 1) {
            throw new IllegalArgumentException("lines and columns count from 1");
        }
    }

    /** The start of a file, for what concerns the document as a whole. */
    public static Origin startOf(String file) {
        return new Origin(file, 1, 1, "");
    }

    /** Whether both are at one place of one file, whatever it is that begins there. */
    public boolean coincides(Origin other) {
        return line == other.line && column == other.column && file.equals(other.file);
    }

    // Written out, since linking what would be generated takes a while in each run, and every run asks for this.
    @Override
    public boolean equals(Object other) {
        return other instanceof Origin that && line == that.line && column == that.column && pointer.equals(that.pointer) && file.equals(that.file);
    }

    @Override
    public int hashCode() {
        return 31 * (31 * (31 * file.hashCode() + line) + column) + pointer.hashCode();
    }

    /** Sorts by file, then line, column and pointer. */
    @Override
    public int compareTo(Origin other) {
        return IN_READING_ORDER.compare(this, other);
    }
}

package fettle.view;

import java.util.ArrayList;
import java.util.List;

/**
 * Lays text out for a terminal: a narrow gutter of right-aligned words, and beside it text wrapped at spaces. Every piece is made harmless
 * here, so that nothing that a document says can reach a terminal otherwise.
 */
final class Sheet {

    /** Columns in a line; a word that is longer, such as a path, is never broken. */
    static final int WIDTH = 100;

    /** A word of more characters is longer than any path, and only its beginning is shown. */
    private static final int LONGEST_WORD = 5_000;
    private static final int BEGINNING = 60;

    /** Columns of the gutter, with the gap after it. */
    static final int GUTTER = 9;

    private static final int GAP = 2;

    private final StringBuilder text = new StringBuilder();
    private final boolean colour;

    Sheet(boolean colour) {
        this.colour = colour;
    }

    /** An empty line. */
    void blank() {
        text.append('\n');
    }

    /** Text beside a word in the gutter. */
    void entry(Span word, Span... spans) {
        gutter(word);
        wrap(GUTTER, GUTTER, List.of(spans));
    }

    /** Text beside a word in the gutter, kept on one line as it is spaced. */
    void fixed(Span word, Span... spans) {
        gutter(word);
        line(spans);
    }

    /** Text beside a word in the gutter: first a piece that is spaced as it is, then the rest wrapped in a column of its own. */
    void tabbed(Span word, String left, Span... rest) {
        gutter(word);
        append(left, Tone.PLAIN);
        int at = GUTTER + Columns.of(left);
        wrap(at, at, List.of(rest));
    }

    /** Text below an {@link #entry}, indented by {@code deeper} columns. */
    void more(int deeper, Span... spans) {
        pad(GUTTER + deeper);
        wrap(GUTTER + deeper, GUTTER + deeper, List.of(spans));
    }

    /** Text over the whole width. */
    void paragraph(int indent, int hanging, Span... spans) {
        pad(indent);
        wrap(indent, indent + hanging, List.of(spans));
    }

    /** A line as it is, never wrapped. */
    void line(Span... spans) {
        for (Span span : spans) {
            append(span.text(), span.tone());
        }
        text.append('\n');
    }

    /**
     * Sentences with something to the right of each, such as its place: on the same line in one column where that is wide enough for
     * both, otherwise on the next line.
     */
    void aligned(Span word, List<Row> rows) {
        int column = rows.stream().filter(Sheet::onOneLine).mapToInt(row -> row.deeper + Columns.of(row.left)).max().orElse(0);
        int widest = rows.stream().filter(Sheet::onOneLine).mapToInt(row -> Columns.of(row.right)).max().orElse(0);
        boolean together = GUTTER + column + GAP + widest <= WIDTH;
        boolean first = true;
        for (Row row : rows) {
            if (first) {
                gutter(word);
                pad(row.deeper);
            } else {
                pad(GUTTER + row.deeper);
            }
            first = false;
            int at = GUTTER + row.deeper;
            if (row.right.isEmpty()) {
                wrap(at, at + GAP, List.of(Span.plain(row.left)));
            } else if (onOneLine(row)) {
                append(row.left, Tone.PLAIN);
                pad((together ? column - row.deeper : Columns.of(row.left)) - Columns.of(row.left) + GAP);
                append(row.right, Tone.FAINT);
                text.append('\n');
            } else {
                wrap(at, at + GAP, List.of(Span.plain(row.left)));
                pad(at + GAP);
                append(row.right, Tone.FAINT);
                text.append('\n');
            }
        }
    }

    /** A row of {@link #aligned}. */
    record Row(int deeper, String left, String right) {
        Row {
            left = SafeText.of(left);
            right = SafeText.of(right);
        }
    }

    private static boolean onOneLine(Row row) {
        return !row.right.isEmpty() && GUTTER + row.deeper + Columns.of(row.left) + GAP + Columns.of(row.right) <= WIDTH;
    }

    private void gutter(Span word) {
        pad(Math.max(0, GUTTER - GAP - Columns.of(word.text())));
        append(word.text(), word.tone());
        pad(GAP);
    }

    private void pad(int columns) {
        text.append(" ".repeat(columns));
    }

    private record Word(String text, Tone tone, boolean spaceBefore) {}

    /** Words of neighbouring spans belong together unless a space parts them. */
    private void wrap(int at, int indent, List<Span> spans) {
        int column = at;
        boolean lineStart = true;
        List<List<Word>> chunks = chunks(spans);
        for (List<Word> chunk : chunks) {
            int width = chunk.stream().mapToInt(word -> Columns.of(word.text)).sum();
            boolean space = chunk.get(0).spaceBefore && !lineStart;
            if (!lineStart && column + (space ? 1 : 0) + width > WIDTH) {
                text.append('\n');
                pad(indent);
                column = indent;
                space = false;
            }
            if (space) {
                text.append(' ');
                column++;
            }
            chunk.forEach(word -> append(word.text, word.tone));
            column += width;
            lineStart = false;
        }
        text.append('\n');
    }

    /** The pieces between which a line may break. */
    private static List<List<Word>> chunks(List<Span> spans) {
        List<List<Word>> chunks = new ArrayList<>();
        boolean space = true;
        for (Span span : spans) {
            String safe = SafeText.of(span.text());
            if (safe.startsWith(" ")) {
                space = true;
            }
            for (String piece : safe.strip().split(" +")) {
                if (!piece.isEmpty()) {
                    Word word = new Word(shortened(piece), span.tone(), space);
                    if (space || chunks.isEmpty()) {
                        chunks.add(new ArrayList<>(List.of(word)));
                    } else {
                        chunks.get(chunks.size() - 1).add(word);
                    }
                    space = true;
                }
            }
            space = safe.isBlank() ? space || !safe.isEmpty() : safe.endsWith(" ");
        }
        return chunks;
    }

    private static String shortened(String piece) {
        return piece.length() <= LONGEST_WORD ? piece : piece.substring(0, piece.offsetByCodePoints(0, BEGINNING)) + "…";
    }

    private void append(String piece, Tone tone) {
        String safe = SafeText.of(piece);
        text.append(colour ? tone.paint(safe) : safe);
    }

    @Override
    public String toString() {
        return text.toString();
    }
}

package fettle.editor;

import fettle.document.Document;
import fettle.document.Origin;
import java.util.Optional;

/**
 * A text that can't be read to its end while someone types in it. What it held when it last could be stands in for it, so that nobody is told that all of that is gone.
 *
 * @param whole what it held then
 * @param before the text of that
 * @param now the text as it is
 * @param read what that reads as
 * @param head up to where both texts are the same
 * @param tail how much of their ends is the same, beyond that
 */
record Unfinished(Document whole, Lines before, Lines now, Document read, int head, int tail) {

    static Unfinished of(Document whole, Lines before, Lines now, Document read) {
        String one = before.text();
        String other = now.text();
        int most = Math.min(one.length(), other.length());
        int head = 0;
        while (head < most && one.charAt(head) == other.charAt(head)) {
            head++;
        }
        int tail = 0;
        while (tail < most - head && one.charAt(one.length() - 1 - tail) == other.charAt(other.length() - 1 - tail)) {
            tail++;
        }
        return new Unfinished(whole, before, now, read, head, tail);
    }

    /** What keeps it from being read, and nothing that it holds. */
    Document problems() {
        return new Document(read.file(), whole.name(), Optional.empty(), read.problems(), false);
    }

    /** Whether what is told of a place is what keeps the text from being read: it may stand where something stood of which something else is told. */
    boolean hindered(Origin place, Object what) {
        return read.problems().stream().anyMatch(problem -> problem.origin().equals(place) && problem.what().equals(what));
    }

    /** Where a stretch of the text that it was stands in the text that it is; empty where something else has been typed there. */
    Optional<Extents.Stretch> now(Extents.Stretch stretch) {
        if (stretch.to() <= head) {
            return Optional.of(stretch);
        }
        int moved = now.text().length() - before.text().length();
        return stretch.from() >= before.text().length() - tail ? Optional.of(new Extents.Stretch(stretch.from() + moved, stretch.to() + moved)) : Optional.empty();
    }
}

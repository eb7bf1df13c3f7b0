package fettle.editor;

import fettle.document.Document;
import fettle.document.DocumentSet;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Keeps in mind what the open documents of a catalog held when they could last be read to their ends, for as long as they can't be. */
final class Drafts {

    private record Whole(Document document, Lines lines) {}

    private final Map<Path, Whole> wholes = new HashMap<>();

    /**
     * A catalog as it is being written.
     *
     * @param documents what it is read from
     * @param unfinished the texts for which what they held stands in among those
     */
    record Draft(DocumentSet documents, Map<Path, Unfinished> unfinished) {}

    /**
     * Puts what stood there before in the place of what can't be read now.
     *
     * @param texts what the editor holds of these documents
     */
    Draft of(DocumentSet found, Map<Path, OpenText> texts) {
        wholes.keySet().retainAll(texts.keySet());
        List<Document> documents = new ArrayList<>();
        Map<Path, Unfinished> unfinished = new LinkedHashMap<>();
        for (Document document : found.documents()) {
            Path file = Path.of(document.file());
            OpenText text = texts.get(file);
            Whole whole = wholes.get(file);
            boolean broken = !document.problems().isEmpty() && (document.cutShort() || document.root().isEmpty()) && text != null && !text.lines().text().isBlank();
            if (broken && whole != null) {
                unfinished.put(file, Unfinished.of(whole.document(), whole.lines(), text.lines(), document));
                documents.add(whole.document());
            } else {
                if (text != null && !broken) {
                    wholes.put(file, new Whole(document, text.lines()));
                }
                documents.add(document);
            }
        }
        return new Draft(new DocumentSet(documents), unfinished);
    }
}

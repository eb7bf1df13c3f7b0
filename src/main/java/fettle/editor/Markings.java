package fettle.editor;

import fettle.document.Document;
import fettle.document.Origin;
import fettle.engine.Severity;
import fettle.judgement.CatalogReading;
import fettle.judgement.Finding;
import fettle.view.Told;
import fettle.view.Wording;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DiagnosticRelatedInformation;
import org.eclipse.lsp4j.DiagnosticSeverity;
import org.eclipse.lsp4j.Range;

/** Marks findings in the texts that they were found in, as an editor shows them: what is wrong and what to do, with the reasons beside it. */
final class Markings {

    private final Session session;
    private final Desk desk;
    private final Wording wording;
    private final Map<Path, Lines> lines = new LinkedHashMap<>();
    private final Map<String, Document> documents = new LinkedHashMap<>();

    /**
     * Markings of one reading.
     *
     * @param desk the catalog's
     * @param texts what the editor held of the documents when they were read
     */
    Markings(Session session, Desk desk, Map<Path, OpenText> texts, CatalogReading reading) {
        this.session = session;
        this.desk = desk;
        this.wording = new Wording(session.rules().index(), reading.catalog());
        texts.values().forEach(text -> lines.put(text.file(), text.lines()));
        reading.documents().documents().forEach(document -> documents.put(document.file(), document));
    }

    /** The findings that stand somewhere and are not waived, by file. */
    Map<Path, List<Desk.Shown>> of(Collection<Finding> findings) {
        Map<Path, List<Desk.Shown>> shown = new LinkedHashMap<>();
        for (Finding finding : findings) {
            if (finding.waived().isEmpty() && !finding.where().isEmpty()) {
                Path file = Path.of(finding.where().get(0).file());
                of(finding, file).ifPresent(each -> shown.computeIfAbsent(file, unused -> new ArrayList<>()).add(each));
            }
        }
        return shown;
    }

    /** Nothing where what it is about is being written anew, and can't be read yet. */
    private Optional<Desk.Shown> of(Finding finding, Path file) {
        Origin place = finding.where().get(0);
        Optional<Unfinished> unfinished = desk.unfinished(file).filter(text -> !text.hindered(place, finding.data().get("what")));
        Lines found = unfinished.map(Unfinished::before).orElseGet(() -> lines.computeIfAbsent(file, session::lines));
        Extents.Stretch stretch = Extents.marked(found, place, Optional.ofNullable(documents.get(place.file())).flatMap(Document::root));
        Optional<Range> marked = unfinished.isEmpty() ? Optional.of(found.range(stretch.from(), stretch.to()))
                : unfinished.flatMap(text -> text.now(stretch).map(now -> text.now().range(now.from(), now.to())));
        return marked.map(range -> {
            Diagnostic diagnostic = new Diagnostic(range, said(finding), grade(finding.severity()), "fettle", finding.rule());
            diagnostic.setRelatedInformation(related(wording.reasoning(finding)));
            return new Desk.Shown(finding, diagnostic, found);
        });
    }

    private String said(Finding finding) {
        List<String> said = new ArrayList<>(List.of(wording.message(finding)));
        said.addAll(wording.remedies(finding));
        return String.join("\n", said);
    }

    private List<DiagnosticRelatedInformation> related(List<Told> reasons) {
        List<DiagnosticRelatedInformation> related = new ArrayList<>();
        for (Told reason : reasons) {
            reason.where().ifPresent(origin -> related.add(new DiagnosticRelatedInformation(session.location(desk, origin, lines), reason.fact())));
        }
        return related;
    }

    private static DiagnosticSeverity grade(Severity severity) {
        return switch (severity) {
            case ERROR -> DiagnosticSeverity.Error;
            case WARNING -> DiagnosticSeverity.Warning;
            case NOTE -> DiagnosticSeverity.Information;
        };
    }
}

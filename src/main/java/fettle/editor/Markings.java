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

/** Marks findings in the texts that they were found in, as an editor shows them: what is wrong and what to do, with the reasons beside it. */
final class Markings {

    private final Session session;
    private final Wording wording;
    private final Map<Path, Lines> lines = new LinkedHashMap<>();
    private final Map<String, Document> documents = new LinkedHashMap<>();

    /**
     * Markings of one reading.
     *
     * @param texts what the editor held of the documents when they were read
     */
    Markings(Session session, Map<Path, OpenText> texts, CatalogReading reading) {
        this.session = session;
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
                shown.computeIfAbsent(file, unused -> new ArrayList<>()).add(of(finding, file));
            }
        }
        return shown;
    }

    private Desk.Shown of(Finding finding, Path file) {
        Origin place = finding.where().get(0);
        Lines found = lines.computeIfAbsent(file, session::lines);
        Extents.Stretch stretch = Extents.marked(found, place, Optional.ofNullable(documents.get(place.file())).flatMap(Document::root));
        Diagnostic diagnostic = new Diagnostic(found.range(stretch.from(), stretch.to()), said(finding), grade(finding.severity()), "fettle", finding.rule());
        diagnostic.setRelatedInformation(related(wording.reasoning(finding)));
        return new Desk.Shown(finding, diagnostic, found);
    }

    private String said(Finding finding) {
        List<String> said = new ArrayList<>(List.of(wording.message(finding)));
        said.addAll(wording.remedies(finding));
        return String.join("\n", said);
    }

    private List<DiagnosticRelatedInformation> related(List<Told> reasons) {
        List<DiagnosticRelatedInformation> related = new ArrayList<>();
        for (Told reason : reasons) {
            reason.where().ifPresent(origin -> related.add(new DiagnosticRelatedInformation(session.location(origin, lines), reason.fact())));
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

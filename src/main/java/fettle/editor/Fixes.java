package fettle.editor;

import fettle.document.Node;
import fettle.document.Origin;
import fettle.judgement.Finding;
import fettle.judgement.Reason;
import fettle.space.Unresolved;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;

/** Mends what a finding says with one choice: the name that was meant, the patch of today, or a waiver that waits for its reason. */
final class Fixes {

    /** What a waiver cannot accept: a document must be read before anything is known of it. */
    private static final Set<String> NEVER_WAIVED = Set.of("unreadable-document", "schema-mismatch", "idle-waiver", "expired-waiver");

    private final Session session;
    private final Desk desk;
    private final OpenText text;

    Fixes(Session session, Desk desk, OpenText text) {
        this.session = session;
        this.desk = desk;
        this.text = text;
    }

    /** What can be done about the findings in a range; nothing where they are of another text than the one that is held, and so about other places. */
    List<CodeAction> in(Range range) {
        List<CodeAction> actions = new ArrayList<>();
        int from = text.lines().offset(range.getStart());
        int to = text.lines().offset(range.getEnd());
        for (Desk.Shown shown : desk.shown().getOrDefault(text.file(), List.of())) {
            Range marked = shown.diagnostic().getRange();
            boolean fresh = shown.lines().text().equals(text.lines().text());
            if (fresh && text.lines().offset(marked.getStart()) <= to && text.lines().offset(marked.getEnd()) >= from) {
                actions.addAll(renamed(shown));
                waived(shown).ifPresent(actions::add);
            }
        }
        return actions;
    }

    private List<CodeAction> renamed(Desk.Shown shown) {
        Origin place = shown.finding().where().get(0);
        List<CodeAction> actions = new ArrayList<>();
        Written.at(text.file(), text.lines(), place).ifPresent(written -> meant(shown.finding(), place, written.value())
                .forEach((title, meant) -> written.as(meant).ifPresent(edit -> actions.add(action(shown, title, session.uri(text.file()), edit)))));
        return actions;
    }

    /** What should be written in place of what is, where that is what the finding is about; by what the choice is called. */
    private static Map<String, String> meant(Finding finding, Origin place, String written) {
        Map<String, Object> data = finding.data();
        Map<String, String> meant = new LinkedHashMap<>();
        if (data.get("path") instanceof String path && data.get("through") instanceof String through) {
            if (written.equals(path)) {
                list(data.get("near")).forEach(slot -> meant.put("Write " + slot, through(path, through, slot)));
                list(data.get("elsewhere")).forEach(other -> meant.put("Write " + other, other));
            }
        } else if (data.get("id") instanceof String id) {
            // Of "kind:scope" only the last piece is an id.
            if (written.equals(data.getOrDefault("written", id))) {
                Stream.of("selectors", "near").flatMap(names -> list(data.get(names)).stream()).forEach(name -> meant.put("Write " + name, name));
            }
        } else if (finding.rule().equals("idle-waiver") && written.equals(data.get("subject"))) {
            list(data.get("near")).forEach(subject -> meant.put("Write " + subject, subject));
        } else if (finding.rule().equals("schema-mismatch") && data.get("meant") instanceof String known) {
            meant.put("Write " + known, known);
        } else if (finding.rule().equals("outdated-build") && written.equals(data.get("patch"))) {
            meant.put("Say that it is for patch " + data.get("current"), String.valueOf(data.get("current")));
        }
        finding.because().stream().filter(reason -> reason.origin().filter(place::equals).isPresent()).forEach(reason -> {
            if (reason instanceof Reason.Derived derived && derived.result() instanceof Unresolved.NoSuchSlot lost && written.equals(lost.entry().path())) {
                lost.near().orElse(List.of()).forEach(slot -> meant.put("Write " + slot, through(written, lost.through(), slot)));
                lost.elsewhere().orElse(List.of()).forEach(other -> meant.put("Write " + other, other));
            }
        });
        return meant;
    }

    /** A path with another slot at the end of the piece of it that leads nowhere. */
    private static String through(String path, String through, String slot) {
        return through.substring(0, through.lastIndexOf('/') + 1) + slot + path.substring(through.length());
    }

    private static List<String> list(Object data) {
        return data instanceof Collection<?> several ? several.stream().map(Object::toString).toList() : List.of();
    }

    private static CodeAction action(Desk.Shown shown, String title, String uri, TextEdit edit) {
        CodeAction action = new CodeAction(title);
        action.setKind(CodeActionKind.QuickFix);
        action.setDiagnostics(List.of(shown.diagnostic()));
        action.setEdit(new WorkspaceEdit(Map.of(uri, List.of(edit))));
        return action;
    }

    /** A waiver in the document that has waivers, or else at the end of this one, with its reason left open so that it is asked for. */
    private Optional<CodeAction> waived(Desk.Shown shown) {
        Finding finding = shown.finding();
        if (NEVER_WAIVED.contains(finding.rule()) || Session.holdsBuilds(desk, text.file())) {
            return Optional.empty();
        }
        Path file = desk.reading().stream().flatMap(reading -> reading.documents().documents().stream())
                .filter(document -> document.root().orElse(null) instanceof Node.Obj root && root.members().containsKey("waivers"))
                .map(document -> Path.of(document.file())).findFirst().orElse(text.file());
        String title = "Waive this " + finding.rule() + ", and write down why";
        return new NewWaiver(file, session.lines(file)).of(finding.rule(), finding.subject()).map(edit -> action(shown, title, session.uri(file), edit));
    }
}

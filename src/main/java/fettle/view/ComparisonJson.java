package fettle.view;

import fettle.catalog.CatalogHead;
import fettle.judgement.Comparison;
import fettle.judgement.PatchedBuild;
import fettle.space.BuildResult;
import fettle.space.Change;
import fettle.space.Exact;
import fettle.space.LimitMargin;
import fettle.space.PathMove;
import fettle.space.Value;
import fettle.space.patch.AdviceShift;
import fettle.space.patch.BuildShift;
import fettle.space.patch.FigureShift;
import fettle.space.patch.FitGroup;
import fettle.space.patch.FitShift;
import fettle.space.patch.LimitCrossing;
import fettle.space.patch.PathChange;
import fettle.space.patch.Rename;
import fettle.space.patch.RenamedUse;
import fettle.space.patch.Repair;
import fettle.space.patch.RepairOutcome;
import fettle.space.patch.SlotRename;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import tools.jackson.core.JsonGenerator;

/** Writes a comparison as JSON for other programs. */
public final class ComparisonJson {

    private final JsonView view;

    public ComparisonJson(Wording wording, String version) {
        this.view = new JsonView(wording, version);
    }

    /** Findings, and all that differs. */
    public void write(Report report, Comparison comparison, OutputStream out) {
        PlainJson.object(out, json -> {
            view.common(json, report);
            json.writeObjectPropertyStart("old");
            Optional<CatalogHead> old = comparison.old().catalog().head();
            JsonView.text(json, "id", old.map(CatalogHead::id));
            JsonView.text(json, "patch", old.map(CatalogHead::patch));
            ids(json, "unread", comparison.old().unread());
            json.writeEndObject();
            ids(json, "unread", comparison.now().unread());
            parts(json, comparison);
            entries(json, comparison);
            fits(json, comparison);
            dominance(json, comparison.advice());
            list(json, "builds", comparison.builds(), ComparisonJson::build);
        });
    }

    /** Parts and platforms, which share one space of ids. */
    private static void parts(JsonGenerator json, Comparison comparison) {
        List<Change> changes = comparison.changes().all().stream().filter(change -> change.entry().host()).toList();
        json.writeObjectPropertyStart("parts");
        ids(json, "added", changes.stream().filter(change -> change.whole() && change.added()).map(change -> change.entry().id()).sorted().toList());
        ids(json, "removed", changes.stream().filter(change -> change.whole() && change.removed()).map(change -> change.entry().id()).sorted().toList());
        List<Change> changed = changes.stream()
                .filter(change -> !change.whole())
                .sorted(Comparator.comparing((Change change) -> change.entry().id()).thenComparing(Change::what))
                .toList();
        list(json, "changed", changed, (out, change) -> {
            out.writeStringProperty("part", change.entry().id());
            difference(out, change);
        });
        list(json, "renamed", comparison.changes().renames(), ComparisonJson::rename);
        list(json, "renamedSlots", comparison.changes().slotRenames(), ComparisonJson::slot);
        json.writeObjectPropertyStart("touched");
        comparison.touched().forEach((part, platforms) -> ids(json, part, platforms));
        json.writeEndObject();
        json.writeEndObject();
    }

    private static void rename(JsonGenerator json, Rename rename) {
        json.writeStringProperty("from", rename.from().id());
        json.writeStringProperty("to", rename.to().id());
        json.writeBooleanProperty("guess", true);
        json.writeNumberProperty("equal", rename.equal());
        json.writeNumberProperty("differing", rename.differing());
        json.writeBooleanProperty("namesNear", rename.namesNear());
        list(json, "changed", rename.changes(), ComparisonJson::difference);
    }

    private static void slot(JsonGenerator json, SlotRename slot) {
        json.writeStringProperty("host", slot.host().id());
        json.writeStringProperty("from", slot.from());
        json.writeStringProperty("to", slot.to());
        json.writeBooleanProperty("guess", true);
    }

    private static void entries(JsonGenerator json, Comparison comparison) {
        List<Change> changes = comparison.changes().all().stream().filter(change -> !change.entry().host()).toList();
        json.writeObjectPropertyStart("entries");
        ids(json, "added", changes.stream().filter(change -> change.whole() && change.added()).map(change -> change.entry().subject()).sorted().toList());
        ids(json, "removed", changes.stream().filter(change -> change.whole() && change.removed()).map(change -> change.entry().subject()).sorted().toList());
        list(json, "changed", changes.stream().filter(change -> !change.whole()).toList(), ComparisonJson::change);
        list(json, "renamed", comparison.changes().entryRenames(), (out, rename) -> {
            out.writeStringProperty("from", rename.from().subject());
            out.writeStringProperty("to", rename.to().subject());
            out.writeBooleanProperty("guess", true);
        });
        json.writeEndObject();
    }

    /** A difference with the entry that it is in. */
    private static void change(JsonGenerator json, Change change) {
        json.writeStringProperty("entry", change.entry().subject());
        difference(json, change);
    }

    private static void difference(JsonGenerator json, Change change) {
        json.writeStringProperty("what", change.what());
        value(json, "from", change.from());
        value(json, "to", change.to());
    }

    private static void value(JsonGenerator json, String name, Optional<Value> value) {
        if (value.isPresent() && value.get().several()) {
            ids(json, name, value.get().texts());
        } else {
            JsonView.text(json, name, value.map(Value::text));
        }
    }

    /** Every fit, with its cause by its place in the list of causes. */
    private static void fits(JsonGenerator json, Comparison comparison) {
        List<FitGroup> groups = new ArrayList<>(comparison.lost());
        groups.addAll(comparison.gained());
        Map<FitShift, Integer> causes = new HashMap<>();
        for (int i = 0; i < groups.size(); i++) {
            for (FitShift fit : groups.get(i).fits()) {
                causes.put(fit, i);
            }
        }
        json.writeObjectPropertyStart("fits");
        fits(json, "lost", comparison.lost(), causes);
        fits(json, "gained", comparison.gained(), causes);
        list(json, "causes", groups, (out, group) -> {
            ids(out, "by", group.by());
            list(out, "changes", group.causes(), ComparisonJson::change);
        });
        json.writeEndObject();
    }

    private static void fits(JsonGenerator json, String name, List<FitGroup> groups, Map<FitShift, Integer> causes) {
        List<FitShift> fits = groups.stream().flatMap(group -> group.fits().stream()).sorted().toList();
        list(json, name, fits, (out, fit) -> {
            out.writeStringProperty("host", fit.slot().host());
            out.writeStringProperty("slot", fit.slot().slot());
            out.writeStringProperty("part", fit.part());
            out.writeNumberProperty("cause", causes.get(fit));
        });
    }

    private static void dominance(JsonGenerator json, Optional<List<AdviceShift>> advice) {
        if (advice.isEmpty()) {
            json.writeNullProperty("dominance");
            return;
        }
        json.writeObjectPropertyStart("dominance");
        list(json, "newly", advice.get().stream().filter(AdviceShift::newly).toList(), ComparisonJson::advice);
        list(json, "noLonger", advice.get().stream().filter(shift -> !shift.newly()).toList(), ComparisonJson::advice);
        json.writeEndObject();
    }

    private static void advice(JsonGenerator json, AdviceShift shift) {
        json.writeStringProperty("platform", shift.platform());
        json.writeStringProperty("host", shift.host());
        json.writeStringProperty("slot", shift.slot());
        json.writeStringProperty("part", shift.part());
    }

    private static void build(JsonGenerator json, PatchedBuild build) {
        BuildShift shift = build.shift();
        json.writeStringProperty("id", build.id());
        json.writeStringProperty("file", build.file());
        json.writeStringProperty("platform", shift.build().platform().id());
        side(json, "before", shift.before());
        side(json, "after", shift.after());
        json.writeStringProperty("verdict", shift.verdict().word());
        list(json, "moved", shift.figures(), ComparisonJson::moved);
        list(json, "crossed", shift.crossings(), ComparisonJson::crossed);
        list(json, "blame", shift.blame(), ComparisonJson::change);
        list(json, "renamed", shift.renamed(), ComparisonJson::renamed);
        list(json, "renamedSlots", shift.renamedSlots(), ComparisonJson::slot);
        repair(json, "repair", shift.repair().flatMap(
                outcome -> outcome instanceof RepairOutcome.Found found ? Optional.of(found.repair()) : Optional.empty()));
        if (shift.repair().isPresent() && shift.repair().get() instanceof RepairOutcome.CutShort cut) {
            json.writeNumberProperty("repairTakesAtLeast", cut.atLeast());
        }
        repair(json, "keeping", shift.keeping());
    }

    private static void side(JsonGenerator json, String name, BuildResult result) {
        json.writeObjectPropertyStart(name);
        json.writeBooleanProperty("valid", result.valid());
        json.writeName("totals");
        JsonView.value(json, result.totals());
        JsonView.text(json, "cost", result.cost().map(Exact::text));
        json.writeEndObject();
    }

    private static void moved(JsonGenerator json, FigureShift figure) {
        json.writeStringProperty("figure", figure.cost() ? "cost" : figure.figure());
        figure(json, "from", figure.from());
        figure(json, "to", figure.to());
        list(json, "blame", figure.blame(), ComparisonJson::change);
    }

    private static void figure(JsonGenerator json, String name, Optional<BigDecimal> value) {
        JsonView.text(json, name, value.map(Exact::text));
    }

    private static void crossed(JsonGenerator json, LimitCrossing crossing) {
        json.writeStringProperty("id", crossing.limit().id());
        json.writeBooleanProperty("outward", crossing.outward());
        margin(json, "before", crossing.before());
        json.writeName("after");
        JsonView.limit(json, crossing.after());
        list(json, "blame", crossing.blame(), ComparisonJson::change);
    }

    private static void margin(JsonGenerator json, String name, Optional<LimitMargin> margin) {
        if (margin.isPresent()) {
            json.writeName(name);
            JsonView.limit(json, margin.get());
        } else {
            json.writeNullProperty(name);
        }
    }

    private static void renamed(JsonGenerator json, RenamedUse use) {
        json.writeStringProperty("written", use.written());
        json.writeStringProperty(use.old() ? "now" : "formerly", use.other());
        ids(json, "paths", use.paths());
    }

    private static void move(JsonGenerator json, PathMove move) {
        json.writeStringProperty("from", move.from());
        json.writeStringProperty("to", move.to());
    }

    private static void repair(JsonGenerator json, String name, Optional<Repair> repair) {
        if (repair.isEmpty()) {
            json.writeNullProperty(name);
            return;
        }
        json.writeObjectPropertyStart(name);
        list(json, "steps", repair.get().steps(), ComparisonJson::step);
        list(json, "rewritten", repair.get().rewritten(), ComparisonJson::move);
        list(json, "movedUp", repair.get().movedUp(), ComparisonJson::move);
        JsonView.text(json, "cost", repair.get().cost().map(Exact::text));
        json.writeNumberProperty("others", repair.get().others());
        json.writeEndObject();
    }

    private static void step(JsonGenerator json, PathChange step) {
        json.writeStringProperty("path", step.path());
        JsonView.text(json, "from", step.from());
        JsonView.text(json, "to", step.to());
        json.writeBooleanProperty("renamed", step.renamed());
    }

    private static void ids(JsonGenerator json, String name, Iterable<String> ids) {
        json.writeArrayPropertyStart(name);
        ids.forEach(json::writeString);
        json.writeEndArray();
    }

    private static <T> void list(JsonGenerator json, String name, List<T> items, BiConsumer<JsonGenerator, T> members) {
        json.writeArrayPropertyStart(name);
        items.forEach(item -> {
            json.writeStartObject();
            members.accept(json, item);
            json.writeEndObject();
        });
        json.writeEndArray();
    }
}

package fettle.view;

import fettle.space.BuildResult;
import fettle.space.Exact;
import fettle.space.Fraction;
import fettle.space.LimitMargin;
import fettle.space.PathMove;
import fettle.space.best.Improvement;
import fettle.space.best.Mainstay;
import fettle.space.best.Outcome;
import fettle.space.best.Purchase;
import fettle.space.best.Share;
import fettle.space.best.Swap;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import tools.jackson.core.JsonGenerator;

/** Writes how a build can be improved as JSON. */
public final class ImprovementJson {

    private final JsonView view;
    private final ImprovementWording wording;

    public ImprovementJson(Wording wording, ImprovementWording improvementWording, String version) {
        this.view = new JsonView(wording, version);
        this.wording = improvementWording;
    }

    /** Findings on the build, then what it comes to, each single swap, and the best build. */
    public void write(Report report, Improvement improvement, OutputStream out) {
        PlainJson.object(out, json -> {
            view.common(json, report);
            json.writeStringProperty("build", improvement.before().build().id());
            json.writeStringProperty("lens", improvement.weighing().lens().id());
            json.writeObjectPropertyStart("before");
            figures(json, improvement.before(), improvement.benefit());
            json.writeEndObject();
            swaps(json, "swaps", improvement, improvement.swaps().swaps(), false);
            texts(json, "bounded", improvement.swaps().bounded());
            swaps(json, "steps", improvement, improvement.steps().swaps(), true);
            json.writeBooleanProperty("stepsProved", improvement.steps().proved());
            best(json, improvement);
            json.writeArrayPropertyStart("margins");
            improvement.worn().forEach(worn -> worn(json, worn));
            json.writeEndArray();
        });
    }

    private static void figures(JsonGenerator json, BuildResult result, BigDecimal benefit) {
        json.writeName("totals");
        JsonView.value(json, result.totals());
        JsonView.text(json, "cost", result.cost().map(Exact::text));
        json.writeStringProperty("benefit", Exact.text(benefit));
    }

    private static void texts(JsonGenerator json, String name, List<String> texts) {
        json.writeArrayPropertyStart(name);
        texts.forEach(json::writeString);
        json.writeEndArray();
    }

    private static void parts(JsonGenerator json, String name, Map<String, String> parts) {
        json.writeName(name);
        JsonView.value(json, parts);
    }

    /** Each swap is one of the build as it is or, where they are steps, as the step before leaves it. */
    private void swaps(JsonGenerator json, String name, Improvement improvement, List<Swap> swaps, boolean steps) {
        json.writeArrayPropertyStart(name);
        BuildResult before = improvement.before();
        for (Swap swap : swaps) {
            json.writeStartObject();
            json.writeStringProperty("path", swap.path());
            parts(json, "from", swap.from());
            parts(json, "to", swap.to());
            figures(json, swap.after(), swap.benefit());
            json.writeStringProperty("gain", Exact.text(swap.gain()));
            json.writeStringProperty("price", Exact.text(swap.price()));
            buy(json, swap.buy());
            texts(json, "carried", swap.carried());
            texts(json, "lost", swap.lost());
            texts(json, "rolesLost", swap.rolesLost());
            texts(json, "rolesElsewhere", swap.rolesElsewhere());
            texts(json, "limitsBroken", swap.limitsBroken());
            texts(json, "notchesDropped", swap.notchesDropped());
            json.writeArrayPropertyStart("movedUp");
            for (PathMove move : swap.movedUp(before.build())) {
                json.writeStartObject();
                json.writeStringProperty("from", move.from());
                json.writeStringProperty("to", move.to());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeName("held");
            JsonView.value(json, Mainstay.of(improvement.weighing(), before, swap.prospect()));
            json.writeEndObject();
            before = steps ? swap.after() : before;
        }
        json.writeEndArray();
    }

    private static void buy(JsonGenerator json, List<Purchase> purchases) {
        json.writeArrayPropertyStart("buy");
        for (Purchase purchase : purchases) {
            json.writeStartObject();
            json.writeStringProperty("part", purchase.part());
            JsonView.text(json, "vendor", purchase.offer().map(priced -> priced.offer().vendor()));
            JsonView.text(json, "tier", purchase.offer().filter(priced -> priced.offer().tiered()).map(priced -> Integer.toString(priced.offer().tier())));
            JsonView.text(json, "cost", purchase.offer().map(priced -> Exact.text(priced.cost())));
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void best(JsonGenerator json, Improvement improvement) {
        if (improvement.best().isEmpty()) {
            json.writeNullProperty("best");
            texts(json, "because", wording.because(improvement.outcome()));
            json.writeBooleanProperty("undecided", !(improvement.outcome() instanceof Outcome.Nothing));
            return;
        }
        Outcome.Found found = (Outcome.Found) improvement.outcome();
        json.writeObjectPropertyStart("best");
        json.writeName("parts");
        JsonView.value(json, CoexistenceJson.written(found.build().paths()));
        figures(json, improvement.best().get().after(), found.benefit());
        json.writeBooleanProperty("proved", found.proved());
        json.writeStringProperty("bound", Exact.text(found.bound()));
        json.writeStringProperty("price", Exact.text(improvement.best().get().price()));
        buy(json, improvement.best().get().buy().orElse(List.of()));
        texts(json, "notchesDropped", improvement.best().get().notchesDropped());
        json.writeArrayPropertyStart("shares");
        for (Share share : improvement.best().get().shares()) {
            json.writeStartObject();
            json.writeStringProperty("path", share.path());
            parts(json, "from", share.from());
            parts(json, "to", share.to());
            json.writeName("totals");
            JsonView.value(json, share.totals());
            json.writeStringProperty("benefit", Exact.text(share.benefit()));
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void worn(JsonGenerator json, Improvement.Worn worn) {
        json.writeStartObject();
        json.writeStringProperty("outfit", worn.outfit());
        margins(json, "before", worn.before());
        worn.after().ifPresent(after -> margins(json, "best", after));
        json.writeEndObject();
    }

    private static void margins(JsonGenerator json, String name, List<LimitMargin> margins) {
        json.writeObjectPropertyStart(name);
        margins.forEach(margin -> JsonView.text(json, margin.limit().id(), margin.margin().map(Fraction::toString)));
        json.writeEndObject();
    }
}

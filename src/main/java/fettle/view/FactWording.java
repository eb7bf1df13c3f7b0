package fettle.view;

import fettle.catalog.Access;
import fettle.catalog.Attribute;
import fettle.catalog.Barter;
import fettle.catalog.BlocksTag;
import fettle.catalog.Build;
import fettle.catalog.BuildEntry;
import fettle.catalog.Catalog;
import fettle.catalog.CatalogHead;
import fettle.catalog.ClaimsZone;
import fettle.catalog.Constraint;
import fettle.catalog.Currency;
import fettle.catalog.DeclaresTrait;
import fettle.catalog.Entry;
import fettle.catalog.Excludes;
import fettle.catalog.Fact;
import fettle.catalog.Good;
import fettle.catalog.HasMount;
import fettle.catalog.HasName;
import fettle.catalog.Lens;
import fettle.catalog.Limit;
import fettle.catalog.Needs;
import fettle.catalog.Offer;
import fettle.catalog.Outfit;
import fettle.catalog.Part;
import fettle.catalog.Reference;
import fettle.catalog.Selector;
import fettle.catalog.Slot;
import fettle.catalog.SlotAccepts;
import fettle.catalog.SlotHasMount;
import fettle.catalog.SlotHasTag;
import fettle.catalog.SlotRejects;
import fettle.catalog.Stat;
import fettle.catalog.Vendor;
import fettle.catalog.Waiver;
import fettle.space.Exact;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Puts every fact that a document can state into one plain sentence, without a full stop. Ids stand as they are written in the documents. */
final class FactWording {

    private final Catalog catalog;
    private final Map<Class<? extends Fact>, Function<Fact, String>> sentences = new HashMap<>();

    FactWording(Catalog catalog) {
        this.catalog = catalog;
        on(Access.class, this::access);
        on(Attribute.class, FactWording::attribute);
        on(Barter.class, fact -> "the barter asks for " + Exact.text(fact.count()) + " of " + fact.good());
        on(BlocksTag.class, fact -> fact.part() + " blocks slots tagged " + fact.tag());
        on(Build.class, fact -> "build " + fact.id() + " is made on " + fact.platform().id());
        on(BuildEntry.class, FactWording::placed);
        on(CatalogHead.class, FactWording::head);
        on(ClaimsZone.class, fact -> fact.part() + " takes the zone " + fact.zone());
        on(Constraint.class, FactWording::constraint);
        on(Currency.class, fact -> "1 " + fact.id() + " is worth " + money(fact.rate()));
        on(DeclaresTrait.class, fact -> fact.part() + (fact.values().isEmpty()
                ? " works with no " + fact.trait() + " at all"
                : " works with " + fact.trait() + " " + Phrases.or(fact.values())));
        on(Entry.class, FactWording::entry);
        on(Excludes.class, fact -> fact.part() + " cannot be used with " + Phrases.every(fact.name()));
        on(Good.class, fact -> "1 " + fact.id() + " is worth " + money(fact.value()));
        on(HasMount.class, fact -> fact.part() + " is attached by " + fact.mount());
        on(HasName.class, FactWording::name);
        on(Lens.class, fact -> "lens " + fact.id() + " weighs " + weights(fact.weights()));
        on(Limit.class, this::limit);
        on(Needs.class, fact -> fact.anyOf().isEmpty() ? fact.part() + " needs one of an empty list, which nothing is" : fact.part() + " needs " + Phrases.or(Phrases.each(fact.anyOf(), Phrases::one)));
        on(Offer.class, this::offer);
        on(Outfit.class, fact -> "outfit " + fact.id() + " changes " + effects(fact.effects()));
        on(Part.class, FactWording::part);
        on(Reference.class, FactWording::reference);
        on(Slot.class, FactWording::slot);
        on(SlotAccepts.class, fact -> "slot " + fact.slot() + " accepts " + Phrases.every(fact.name()));
        on(SlotHasMount.class, fact -> "slot " + fact.slot() + " offers " + fact.mount());
        on(SlotHasTag.class, fact -> "slot " + fact.slot() + " is tagged " + fact.tag());
        on(SlotRejects.class, fact -> "slot " + fact.slot() + " rejects " + Phrases.every(fact.name()));
        on(Stat.class, this::stat);
        on(Vendor.class, fact -> fact.tiers() == 0
                ? fact.id() + " is an open market"
                : fact.id() + " has " + (fact.counted() ? Phrases.count(fact.tiers(), "standing tier", "standing tiers") : "a number of standing tiers that could not be read"));
        on(Waiver.class, fact -> "a waiver accepts " + fact.rule() + " for " + fact.subject() + ": " + fact.because());
    }

    private <T extends Fact> void on(Class<T> type, Function<T, String> sentence) {
        sentences.put(type, fact -> sentence.apply(type.cast(fact)));
    }

    String of(Fact fact) {
        Function<Fact, String> sentence = sentences.get(fact.getClass());
        if (sentence == null) {
            throw new IllegalStateException("no words for " + fact.getClass().getSimpleName());
        }
        return sentence.apply(fact);
    }

    private Optional<Attribute> attributeOf(String id) {
        return Optional.ofNullable(catalog.attributes().get(id));
    }

    private String money(BigDecimal amount) {
        return Figures.withUnit(Figures.money(amount), catalog.head().map(CatalogHead::currency).orElse(""));
    }

    private String access(Access fact) {
        List<String> open = fact.vendors().entrySet().stream().map(entry -> opened(entry.getKey(), entry.getValue())).toList();
        return "access " + fact.id() + (open.isEmpty() ? " opens no vendor" : " opens " + Phrases.and(open));
    }

    private String opened(String vendor, int tier) {
        boolean tiered = Optional.ofNullable(catalog.vendors().get(vendor)).map(found -> found.tiers() > 0).orElse(tier > 0);
        return tiered ? vendor + " up to tier " + tier : vendor;
    }

    private static String attribute(Attribute fact) {
        String direction = switch (fact.better()) {
            case HIGHER -> "higher is better";
            case LOWER -> "lower is better";
            case NONE -> "neither more nor less is better";
        };
        return "attribute " + fact.id() + (fact.unit().isEmpty() ? "" : " is counted in " + fact.unit()) + (fact.unit().isEmpty() ? ": " : ", ") + direction
                + ", with " + Phrases.count(fact.decimals(), "decimal place", "decimal places");
    }

    private static String placed(BuildEntry fact) {
        String path = fact.path() + (fact.position() > 0 || fact.at().isPresent() ? ":" + fact.position() : "");
        return what(fact) + " stands at " + path + (fact.at().isPresent() ? ", from notch " + fact.at().getAsInt() : "");
    }

    /** What an entry puts somewhere. */
    static String what(BuildEntry entry) {
        return entry.named() ? entry.part() : "what names no part";
    }

    private static String head(CatalogHead fact) {
        return "catalog " + fact.id() + (fact.patch().isEmpty() ? " names no patch" : " describes patch " + fact.patch()) + (fact.released().isEmpty() ? "" : ", released " + fact.released());
    }

    private static String constraint(Constraint fact) {
        // A part that meets a selector meets it however often it is given.
        List<String> given = fact.when().stream().map(Phrases::one).distinct().toList();
        String when = Phrases.and(given);
        return fact.need().isEmpty()
                ? "constraint " + fact.id() + " forbids " + when + (given.size() > 1 ? " together" : "")
                : "constraint " + fact.id() + " asks for " + Phrases.or(Phrases.each(fact.need(), Phrases::one)) + " wherever there is " + when;
    }

    private static String entry(Entry fact) {
        return fact.space().startsWith("slots of ")
                ? fact.space().substring("slots of ".length()) + " has a slot " + fact.id()
                : "the section " + fact.section() + " has an entry " + fact.id();
    }

    private static String name(HasName fact) {
        Selector selector = new Selector(fact.name(), fact.origin());
        return switch (selector.section()) {
            case "kinds" -> fact.part() + " is of kind " + selector.target();
            case "tags" -> fact.part() + " is tagged " + selector.target();
            default -> "the catalog has " + fact.part();
        };
    }

    private static String weights(Map<String, BigDecimal> weights) {
        return weights.isEmpty() ? "nothing" : Phrases.and(weights.entrySet().stream().map(entry -> entry.getKey() + " by " + Exact.text(entry.getValue())).toList());
    }

    private static String effects(Map<String, BigDecimal> effects) {
        return effects.isEmpty() ? "nothing" : Phrases.and(effects.entrySet().stream().map(entry -> entry.getKey() + " by " + Figures.signed(entry.getValue()) + " %").toList());
    }

    private String limit(Limit fact) {
        String side = fact.side() == Limit.Side.AT_LEAST ? "at least " : "at most ";
        String bound = fact.bound() instanceof Limit.Fixed fixed
                ? Figures.withUnit(Exact.text(fixed.value()), attributeOf(fact.attribute()))
                : table((Limit.Table) fact.bound());
        return "limit " + fact.id() + " wants " + fact.attribute() + " to be " + side + bound + (fact.loaded() ? ", loaded" : "");
    }

    private static String table(Limit.Table table) {
        return "what its table gives for " + table.by() + " (" + Phrases.and(Phrases.each(table.points(), point -> Exact.text(point.y()) + " at " + Exact.text(point.x()))) + ")";
    }

    private String offer(Offer fact) {
        String price = fact.price().isPresent()
                ? Figures.withUnit(Figures.money(fact.price().get()), fact.currency())
                : Phrases.and(Phrases.each(fact.barter(), item -> Exact.text(item.count()) + " of " + item.good()));
        return fact.vendor() + (fact.price().isPresent() ? " sells " : " trades ") + fact.part() + (fact.tiered() ? " at tier " + fact.tier() : "") + " for " + price
                + fact.seen().map(date -> ", seen " + date).orElse("");
    }

    private static String part(Part fact) {
        return fact.platform()
                ? fact.id() + " is a platform"
                : fact.id() + " is a part" + fact.kind().map(kind -> " of kind " + kind).orElse("");
    }

    private static String reference(Reference fact) {
        return fact.subject() + " names the " + fact.what().replaceFirst("^offered ", "") + " " + fact.id();
    }

    private static String slot(Slot fact) {
        List<String> says = new ArrayList<>();
        if (!fact.mounts().isEmpty()) {
            says.add("offers " + Phrases.and(Phrases.each(fact.mounts(), SlotHasMount::mount)));
        }
        if (!fact.accepts().isEmpty()) {
            says.add("accepts " + Phrases.and(Phrases.each(fact.accepts(), name -> Phrases.every(name.name()))));
        }
        if (!fact.rejects().isEmpty()) {
            says.add("rejects " + Phrases.and(Phrases.each(fact.rejects(), name -> Phrases.every(name.name()))));
        }
        if (fact.mounts().isEmpty() && fact.accepts().isEmpty()) {
            says.add("offers no mount and accepts nothing");
        }
        if (fact.measured()) {
            says.add("is " + Phrases.count(fact.length(), "notch", "notches") + " long");
        }
        if (fact.counted()) {
            says.add("holds at most " + Phrases.count(fact.number(), "part", "parts"));
        }
        if (fact.required()) {
            says.add("must hold a part");
        }
        if (fact.repeats()) {
            says.add("takes a part more than once");
        }
        return "slot " + fact.id() + " " + Phrases.and(says);
    }

    private String stat(Stat fact) {
        boolean base = catalog.platforms().containsKey(fact.part());
        Optional<Attribute> attribute = attributeOf(fact.attribute());
        boolean percent = !base && attribute.map(Figures::inPercent).orElse(false);
        boolean added = !base && attribute.map(Figures::addedUp).orElse(false);
        String number = added ? Figures.signed(fact.value()) : Exact.text(fact.value());
        return fact.part() + " has " + fact.attribute() + " " + (percent ? number + " %" : Figures.withUnit(number, attribute)) + (fact.loaded() ? " when loaded" : "");
    }
}

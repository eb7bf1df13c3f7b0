package fettle.view;

import fettle.catalog.Attribute;
import fettle.catalog.Barter;
import fettle.catalog.Catalog;
import fettle.catalog.Fact;
import fettle.catalog.Limit;
import fettle.catalog.Offer;
import fettle.catalog.Part;
import fettle.catalog.Slot;
import fettle.catalog.SlotId;
import fettle.catalog.Stat;
import fettle.relation.Fit;
import fettle.relation.Relations;
import fettle.space.Exact;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** Tells for people what is known of an id that names no part and no platform: what it means, and who uses it. */
final class IdText {

    private final Wording wording;
    private final Relations relations;
    private final Catalog catalog;
    private final Sheet sheet;

    IdText(Wording wording, Relations relations, Sheet sheet) {
        this.wording = wording;
        this.relations = relations;
        this.catalog = relations.catalog();
        this.sheet = sheet;
    }

    void write(IdSort.Named named) {
        String id = named.id();
        // Words that have no room before the name stand behind it.
        String behind = switch (named.sort()) {
            case ATTRIBUTE -> ", an attribute";
            case CONSTRAINT -> ", a constraint";
            default -> "";
        };
        sheet.entry(Span.faint(behind.isEmpty() ? named.sort().word() : "id"), Span.strong(label(named)), Span.plain(behind));
        catalog.entries().stream()
                .filter(entry -> entry.section().equals(named.sort().section()) && entry.id().equals(id) && named.sort() != IdSort.SLOT)
                .forEach(entry -> sheet.entry(Span.faint("at"), Span.plain(Places.of(entry.origin()))));
        switch (named.sort()) {
            case KIND -> kind(id);
            case TAG -> tag(id);
            case MOUNT -> mount(id);
            case ZONE -> list("parts that take it", parts(part -> part.claims().stream().anyMatch(claim -> claim.zone().equals(id))));
            case TRAIT -> trait(id);
            case SLOT -> slot(id);
            case ATTRIBUTE -> attribute(catalog.attributes().get(id));
            case CONSTRAINT -> {
                says(catalog.constraints().get(id));
                Optional.ofNullable(catalog.constraints().get(id)).map(constraint -> constraint.because()).filter(why -> !why.isEmpty())
                        .ifPresent(why -> sheet.entry(Span.faint("since"), Span.plain(why)));
            }
            case CURRENCY -> {
                says(catalog.currencies().get(id));
                list("parts sold for it", offered(offer -> offer.price().isPresent() && offer.currency().equals(id)));
            }
            case VENDOR -> vendor(id);
            case GOOD -> {
                says(catalog.goods().get(id));
                list("parts traded for it", offered(offer -> offer.barter().stream().map(Barter::good).anyMatch(id::equals)));
            }
            case ACCESS -> says(catalog.access().get(id));
            case OUTFIT -> says(catalog.outfits().get(id));
            case LIMIT -> limit(catalog.limits().get(id));
            case LENS -> says(catalog.lenses().get(id));
            case PART, PLATFORM -> throw new IllegalArgumentException("told elsewhere: " + named);
        }
    }

    private String label(IdSort.Named named) {
        String id = named.id();
        Optional<String> label = switch (named.sort()) {
            case KIND -> Optional.ofNullable(catalog.kinds().get(id)).map(Catalog.Kind::label);
            case MOUNT -> Optional.ofNullable(catalog.mounts().get(id));
            case ZONE -> Optional.ofNullable(catalog.zones().get(id));
            case TRAIT -> Optional.ofNullable(catalog.traits().get(id));
            case ATTRIBUTE -> Optional.ofNullable(catalog.attributes().get(id)).map(Attribute::label);
            case VENDOR -> Optional.ofNullable(catalog.vendors().get(id)).map(vendor -> vendor.label());
            case GOOD -> Optional.ofNullable(catalog.goods().get(id)).map(good -> good.label());
            case ACCESS -> Optional.ofNullable(catalog.access().get(id)).map(access -> access.label());
            case OUTFIT -> Optional.ofNullable(catalog.outfits().get(id)).map(outfit -> outfit.label());
            case LIMIT -> Optional.ofNullable(catalog.limits().get(id)).map(Limit::label);
            case LENS -> Optional.ofNullable(catalog.lenses().get(id)).map(lens -> lens.label());
            default -> Optional.empty();
        };
        return Phrases.named(id, label.orElse(id));
    }

    /** A fact may be missing where its entry could not be read; the findings say why. */
    private void says(Fact fact) {
        if (fact != null) {
            sheet.entry(Span.faint("is"), Span.plain(wording.fact(fact)));
        }
    }

    private void list(String what, List<String> items) {
        if (!items.isEmpty()) {
            sheet.more(0, Span.plain(what + " (" + items.size() + "): "), Span.plain(String.join(", ", items)));
        }
    }

    private List<String> parts(Predicate<Part> which) {
        return Stream.concat(catalog.platforms().values().stream(), catalog.parts().values().stream()).filter(which).map(Part::id).sorted().toList();
    }

    private List<String> slots(Predicate<Slot> which) {
        return Stream.concat(catalog.platforms().values().stream(), catalog.parts().values().stream())
                .flatMap(host -> host.slots().stream()).filter(which).map(slot -> slot.id().toString()).sorted().toList();
    }

    private List<String> offered(Predicate<Offer> which) {
        return List.copyOf(new TreeSet<>(catalog.offers().stream().filter(which).map(Offer::part).toList()));
    }

    private void kind(String id) {
        Optional.ofNullable(catalog.kinds().get(id)).filter(Catalog.Kind::role)
                .ifPresent(kind -> sheet.entry(Span.faint("is"), Span.plain("a role: parts of this kind serve a purpose that stats don't show")));
        list("parts of this kind", parts(part -> part.kind().filter(id::equals).isPresent()));
        named("kind:" + id);
    }

    private void tag(String id) {
        list("parts that bear it", parts(part -> part.names().stream().anyMatch(name -> name.name().equals("tag:" + id))));
        list("slots that bear it", slots(slot -> slot.tags().stream().anyMatch(tag -> tag.tag().equals(id))));
        list("parts that block slots that bear it", parts(part -> part.blocks().stream().anyMatch(blocks -> blocks.tag().equals(id))));
        named("tag:" + id);
    }

    private void named(String selector) {
        list("slots that accept such parts", slots(slot -> slot.accepts().stream().anyMatch(name -> name.name().equals(selector))));
        list("slots that reject such parts", slots(slot -> slot.rejects().stream().anyMatch(name -> name.name().equals(selector))));
    }

    private void mount(String id) {
        list("parts attached by it", parts(part -> part.mounts().stream().anyMatch(mount -> mount.mount().equals(id))));
        list("slots that offer it", slots(slot -> slot.mounts().stream().anyMatch(mount -> mount.mount().equals(id))));
    }

    private void trait(String id) {
        Map<String, List<String>> byValue = new TreeMap<>();
        Stream.concat(catalog.platforms().values().stream(), catalog.parts().values().stream())
                .forEach(part -> part.traits().stream().filter(declared -> declared.trait().equals(id))
                        .forEach(declared -> declared.values().forEach(value -> byValue.computeIfAbsent(value, unused -> new ArrayList<>()).add(part.id()))));
        byValue.forEach((value, parts) -> list("parts that work with " + value, parts.stream().sorted().toList()));
    }

    private void slot(String id) {
        SlotId slot = new SlotId(id.substring(0, id.indexOf('/')), id.substring(id.indexOf('/') + 1));
        Slot written = relations.slot(slot).orElseThrow();
        sheet.entry(Span.faint("at"), Span.plain(Places.of(written.origin())));
        says(written);
        Map<List<Fit>, List<String>> byWay = new java.util.LinkedHashMap<>();
        relations.candidates(slot).forEach(part -> byWay.computeIfAbsent(relations.ways(slot, part), unused -> new ArrayList<>()).add(part));
        byWay.forEach((ways, parts) -> list("parts that fit by " + Phrases.and(Phrases.each(ways, Fit::by)), parts));
        if (byWay.isEmpty()) {
            sheet.more(0, new Span("nothing in the catalog fits it", Tone.WARNING));
        }
    }

    private void attribute(Attribute attribute) {
        if (attribute == null) {
            return;
        }
        says(attribute);
        List<Stat> stats = catalog.parts().values().stream().flatMap(part -> Optional.ofNullable(part.stats().get(attribute.id())).stream())
                .sorted(Comparator.comparing(Stat::value).thenComparing(Stat::part)).toList();
        if (!stats.isEmpty()) {
            Stat least = stats.get(0);
            Stat most = stats.get(stats.size() - 1);
            sheet.more(0, Span.plain("stated by " + Phrases.count(stats.size(), "part", "parts") + ", from " + Exact.text(least.value()) + " (" + least.part() + ") to "
                    + Exact.text(most.value()) + " (" + most.part() + ")"));
        }
    }

    private void vendor(String id) {
        says(catalog.vendors().get(id));
        Map<Integer, List<String>> byTier = new TreeMap<>();
        catalog.offers().stream().filter(offer -> offer.vendor().equals(id))
                .forEach(offer -> byTier.computeIfAbsent(offer.tier(), unused -> new ArrayList<>()).add(offer.part()));
        byTier.forEach((tier, parts) -> list("parts sold" + (tier > 0 ? " at tier " + tier : ""), parts.stream().distinct().toList()));
    }

    private void limit(Limit limit) {
        says(limit);
        if (limit != null && limit.bound() instanceof Limit.Table table) {
            sheet.entry(Span.faint("table"), Span.plain(Phrases.joined(
                    Phrases.each(table.points(), point -> Exact.text(point.y()) + " at " + table.by() + " " + Exact.text(point.x())), "and")));
        }
    }
}

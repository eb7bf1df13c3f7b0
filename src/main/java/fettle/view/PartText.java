package fettle.view;

import fettle.catalog.Access;
import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.catalog.CatalogHead;
import fettle.catalog.HasName;
import fettle.catalog.Offer;
import fettle.catalog.Part;
import fettle.catalog.Selector;
import fettle.catalog.Slot;
import fettle.catalog.SlotId;
import fettle.catalog.Stat;
import fettle.catalog.Vendor;
import fettle.relation.Fit;
import fettle.relation.Relations;
import fettle.relation.SlotRoom;
import fettle.space.Chain;
import fettle.space.Chains;
import fettle.space.Exact;
import fettle.space.Prices;
import fettle.space.worth.Placings;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Tells for people all that is known of one part or platform. */
final class PartText {

    private static final int MOST_NAMED = 8;

    private final Wording wording;
    private final Relations relations;
    private final Catalog catalog;
    private final Sheet sheet;

    PartText(Wording wording, Relations relations, Sheet sheet) {
        this.wording = wording;
        this.relations = relations;
        this.catalog = relations.catalog();
        this.sheet = sheet;
    }

    void write(PartAccount account, Optional<Access> access, Placings placings) {
        Part part = account.part();
        sheet.entry(Span.faint(part.platform() ? "platform" : "part"), Span.strong(Phrases.named(part.id(), part.label())));
        sheet.entry(Span.faint("at"), Span.plain(Places.of(part.origin())));
        described(part).ifPresent(text -> sheet.entry(Span.faint("is"), Span.plain(text)));
        stats(part);
        if (!part.platform()) {
            seats(account.seats());
            routes(account.routes());
        }
        ties(account.ties(), Tie.Sort.CLASH, "clash");
        ties(account.ties(), Tie.Sort.NEED, "need");
        ties(account.ties(), Tie.Sort.SERVICE, "serve");
        ties(account.ties(), Tie.Sort.AGREEMENT, "agree");
        holdings(account.holdings());
        factory(part);
        if (!part.platform()) {
            new StandingText(catalog, new Prices(catalog, access)).write(sheet, placings);
            offers(account, access);
        }
    }

    private Optional<String> described(Part part) {
        List<String> says = new ArrayList<>();
        part.kind().ifPresent(kind -> says.add("of kind " + kind));
        List<String> tags = part.names().stream().map(HasName::name).map(name -> new Selector(name, part.origin()))
                .filter(name -> name.section().equals("tags")).map(Selector::target).toList();
        if (!tags.isEmpty()) {
            says.add("tagged " + Phrases.and(tags));
        }
        if (!part.mounts().isEmpty()) {
            says.add("attached by " + Phrases.or(Phrases.each(part.mounts(), mount -> mount.mount())));
        }
        if (part.span() > 1) {
            says.add(Phrases.count(part.span(), "notch", "notches") + " long");
        }
        return says.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", says));
    }

    private void stats(Part part) {
        List<Grid.Cell> cells = new ArrayList<>();
        part.stats().values().forEach(stat -> cells.add(cell(part, stat, "")));
        part.loaded().values().forEach(stat -> cells.add(cell(part, stat, part.platform() ? " loaded, counted nowhere" : " loaded")));
        grid("stats", cells);
    }

    private Grid.Cell cell(Part part, Stat stat, String when) {
        Optional<Attribute> attribute = Optional.ofNullable(catalog.attributes().get(stat.attribute()));
        boolean percent = !part.platform() && attribute.map(Figures::inPercent).orElse(false);
        boolean added = !part.platform() && attribute.map(Figures::addedUp).orElse(false);
        String number = added ? Figures.signed(stat.value()) : Exact.text(stat.value());
        return new Grid.Cell(attribute.map(Attribute::label).orElse(stat.attribute()) + when, number, percent ? "%" : attribute.map(found -> Figures.unit(number, found.unit())).orElse(""));
    }

    private void grid(String word, List<Grid.Cell> cells) {
        String gutter = word;
        for (String line : Grid.lines(cells, Sheet.WIDTH - Sheet.GUTTER)) {
            sheet.fixed(Span.faint(gutter), Span.plain(line));
            gutter = "";
        }
    }

    private void seats(List<PartAccount.Seat> seats) {
        sheet.blank();
        if (seats.isEmpty()) {
            sheet.entry(Span.faint("fits"), new Span("no slot of the catalog", Tone.WARNING));
        }
        String gutter = "fits";
        for (PartAccount.Seat seat : seats) {
            sheet.entry(Span.faint(gutter), Span.plain(Phrases.and(Phrases.each(seat.ways(), way -> by(seat.slots().get(0), way))) + ": "
                    + Phrases.and(Phrases.each(seat.slots(), SlotId::toString))));
            gutter = "";
        }
    }

    /** The slot offers a mount of that name, or accepts the part by that name. */
    private String by(SlotId slot, Fit way) {
        boolean mount = relations.slot(slot).map(Slot::mounts).orElse(List.of()).stream().anyMatch(offered -> offered.mount().equals(way.by()));
        return mount ? "by " + way.by() : "accepted as " + Phrases.one(way.by());
    }

    private void routes(List<PartAccount.Route> routes) {
        sheet.blank();
        if (routes.isEmpty()) {
            sheet.entry(Span.faint("reach"), new Span("no platform leads to it", Tone.WARNING));
        }
        String gutter = "reach";
        for (PartAccount.Route route : routes) {
            int more = route.slots().size() - (int) route.chains().stream().map(chain -> chain.links().get(0).slot()).distinct().count();
            sheet.entry(Span.faint(gutter), Span.strong(Phrases.named(route.platform().id(), route.platform().label())),
                    Span.plain(more == 0 ? "" : ", and by longer ways through " + Phrases.count(more, "more slot", "more slots")));
            route.chains().forEach(chain -> sheet.more(2, Span.plain(steps(chain))));
            gutter = "";
        }
    }

    private static String steps(Chain chain) {
        List<Chains.Link> links = chain.links();
        if (links.size() == 1) {
            return "straight into " + links.get(0).slot();
        }
        return links.subList(0, links.size() - 1).stream().map(link -> link.part() + " in " + link.slot()).collect(Collectors.joining(", then "))
                + ", then into " + links.get(links.size() - 1).slot();
    }

    private void ties(List<Tie> ties, Tie.Sort sort, String word) {
        List<Tie> told = ties.stream().filter(tie -> tie.sort() == sort).toList();
        if (told.isEmpty()) {
            return;
        }
        sheet.blank();
        String gutter = word;
        for (Tie tie : told) {
            sheet.entry(Span.faint(gutter), Span.plain(tie.told()), Span.plain("  "), Span.faint("(" + tie.rule() + ")"));
            List<Sheet.Row> rows = tie.because().stream().map(fact -> new Sheet.Row(2, wording.fact(fact), Places.of(fact.origin()))).toList();
            sheet.aligned(Span.faint(""), rows);
            gutter = "";
        }
    }

    private void holdings(List<PartAccount.Holding> holdings) {
        if (holdings.isEmpty()) {
            return;
        }
        sheet.blank();
        int name = Grid.widest(Phrases.each(holdings, holding -> holding.slot().slot()));
        String gutter = "slots";
        for (PartAccount.Holding holding : holdings) {
            sheet.tabbed(Span.faint(gutter), Grid.left(holding.slot().slot(), name) + "  ", Span.plain(Phrases.count(holding.parts().size(), "part fits", "parts fit") + asks(relations.room(holding.slot())) + names(holding.parts())));
            gutter = "";
        }
    }

    private static String asks(SlotRoom room) {
        List<String> says = new ArrayList<>();
        if (room.filled()) {
            says.add("must hold one");
        }
        if (room.notches().isPresent()) {
            says.add(Phrases.count(room.notches().getAsInt(), "notch", "notches") + " long");
        }
        if (room.most() > 1) {
            says.add("holds up to " + room.most());
        }
        return says.isEmpty() ? "" : " (" + String.join(", ", says) + ")";
    }

    private static String names(Collection<String> parts) {
        if (parts.isEmpty()) {
            return "";
        }
        List<String> named = parts.stream().limit(parts.size() > MOST_NAMED ? MOST_NAMED - 1L : MOST_NAMED).toList();
        return ": " + (named.size() == parts.size() ? Phrases.and(named) : String.join(", ", named) + " and " + (parts.size() - named.size()) + " more");
    }

    private void factory(Part part) {
        if (!part.factory().isEmpty()) {
            sheet.blank();
            int path = Grid.widest(Phrases.each(part.factory(), entry -> entry.path()));
            String gutter = "factory";
            for (var entry : part.factory()) {
                sheet.fixed(Span.faint(gutter), Span.plain(Grid.left(entry.path(), path) + "  " + entry.part()));
                gutter = "";
            }
        }
    }

    private void offers(PartAccount account, Optional<Access> access) {
        sheet.blank();
        String gutter = "sold";
        if (account.open().isEmpty()) {
            String nobody = account.closed().isEmpty() ? "by nobody" : "by nobody whom " + access.map(Access::id).orElse("anyone") + " can buy from";
            sheet.entry(Span.faint(gutter), new Span(nobody, Tone.WARNING));
            gutter = "";
        }
        gutter = priced(gutter, account.open(), "");
        priced(gutter, account.closed(), access.map(profile -> "closed to " + profile.id()).orElse(""));
    }

    private String priced(String word, List<Prices.Priced> offers, String remark) {
        String gutter = word;
        List<String> costs = Phrases.each(offers, offer -> Figures.withUnit(Figures.money(offer.cost()), catalog.head().map(CatalogHead::currency).orElse("")));
        int width = Grid.widest(costs);
        for (int i = 0; i < offers.size(); i++) {
            Offer offer = offers.get(i).offer();
            sheet.tabbed(Span.faint(gutter), Grid.right(costs.get(i), width) + "  ",
                    Span.plain(seller(offer) + asked(offer) + (remark.isEmpty() ? "" : ", " + remark)), Span.plain("  "), Span.faint(Places.of(offer.origin())));
            gutter = "";
        }
        return gutter;
    }

    private String seller(Offer offer) {
        Optional<Vendor> vendor = Optional.ofNullable(catalog.vendors().get(offer.vendor()));
        return vendor.map(found -> Phrases.named(found.id(), found.label())).orElse(offer.vendor()) + (offer.tiered() ? " at tier " + offer.tier() : "");
    }

    /** What is handed over, where that is not base currency. */
    private String asked(Offer offer) {
        if (offer.price().isEmpty()) {
            return ", for " + Phrases.and(Phrases.each(offer.barter(), item -> Exact.text(item.count()) + " of " + item.good()));
        }
        boolean base = catalog.head().map(head -> head.currency().equals(offer.currency())).orElse(true);
        return base ? "" : ", for " + Figures.withUnit(Figures.money(offer.price().get()), offer.currency());
    }
}

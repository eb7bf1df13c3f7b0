package fettle.view;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.catalog.CatalogHead;
import fettle.catalog.Part;
import fettle.catalog.Slot;
import fettle.catalog.SlotId;
import fettle.catalog.Stat;
import fettle.relation.Relations;
import fettle.relation.SlotRoom;
import fettle.space.Exact;
import fettle.space.Prices;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Writes parts and platforms for a report page, with their slots; slots that fit the same parts share one list of them. */
final class PageHosts {

    private final Relations relations;
    private final Catalog catalog;
    private final Prices prices;
    private final Map<Integer, Integer> numbers = new HashMap<>();
    private final List<SlotId> shapes = new ArrayList<>();

    PageHosts(Relations relations) {
        this.relations = relations;
        this.catalog = relations.catalog();
        this.prices = new Prices(catalog, Optional.empty());
    }

    void write(PageJson page) {
        page.list("attributes", catalog.attributes().values(), attribute -> page.object(() -> {
            page.text("id", attribute.id());
            page.text("label", attribute.label());
        }));
        page.list("platforms", catalog.platforms().values(), platform -> host(page, platform));
        page.list("parts", catalog.parts().values(), part -> host(page, part));
        page.list("fits", shapes, slot -> page.row(() -> relations.candidates(slot).forEach(part -> page.row(() -> {
            page.text(part);
            page.text(relations.ways(slot, part).stream().map(way -> way.by()).distinct().collect(Collectors.joining(" or ")));
        }))));
    }

    private void host(PageJson page, Part host) {
        page.object(() -> {
            page.text("id", host.id());
            page.text("label", host.label());
            page.text("kind", host.kind().orElse(""));
            List<Stat> stats = new ArrayList<>(host.stats().values());
            if (!host.platform()) {
                stats.addAll(host.loaded().values());
            }
            page.list("stats", stats, stat -> page.row(() -> {
                page.text(stat.attribute());
                page.text(figure(host, stat));
                page.json().writeNumber(stat.loaded() ? 1 : 0);
            }));
            page.list("offers", prices.offers(host.id()), priced -> page.row(() -> {
                page.text(priced.offer().place());
                page.text(money(priced.cost()) + (priced.offer().bartered() ? " in goods" : ""));
                page.text(priced.offer().seen().orElse(""));
            }));
            page.list("slots", host.slots(), slot -> slot(page, slot));
        });
    }

    private void slot(PageJson page, Slot slot) {
        SlotRoom room = relations.room(slot.id());
        page.object(() -> {
            page.text("id", slot.id().slot());
            page.text("label", slot.label());
            page.json().writeBooleanProperty("required", room.filled());
            page.json().writeNumberProperty("most", room.most());
            if (room.notches().isPresent()) {
                page.json().writeNumberProperty("notches", room.notches().getAsInt());
            } else {
                page.json().writeNullProperty("notches");
            }
            page.json().writeNumberProperty("fits", number(slot.id()));
        });
    }

    private int number(SlotId slot) {
        return numbers.computeIfAbsent(relations.shape(slot), unused -> {
            shapes.add(slot);
            return shapes.size() - 1;
        });
    }

    private String figure(Part host, Stat stat) {
        Optional<Attribute> attribute = Optional.ofNullable(catalog.attributes().get(stat.attribute()));
        boolean percent = !host.platform() && attribute.map(Figures::inPercent).orElse(false);
        boolean added = !host.platform() && attribute.map(Figures::addedUp).orElse(false);
        String number = added ? Figures.signed(stat.value()) : Exact.text(stat.value());
        return percent ? number + " %" : Figures.withUnit(number, attribute);
    }

    /** An amount in the catalog's base currency. */
    String money(BigDecimal amount) {
        return Figures.withUnit(Figures.money(amount), catalog.head().map(CatalogHead::currency).orElse(""));
    }
}

package fettle.view;

import fettle.catalog.Access;
import fettle.catalog.Catalog;
import fettle.catalog.Lens;
import fettle.catalog.Part;
import fettle.catalog.Slot;
import fettle.space.Exact;
import fettle.space.Landscape;
import fettle.space.worth.Climb;
import fettle.space.worth.Ladder;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Writes for a report page what each platform's own slots offer for their price, by lens. */
final class PageLadders {

    /** A page holds many ladders, and waits for none that is long in the making. */
    private static final long MOST_STEPS = 200_000;

    private final Catalog catalog;
    private final Landscape landscape;
    private final Optional<Access> access;

    PageLadders(Catalog catalog, Landscape landscape, Optional<Access> access) {
        this.catalog = catalog;
        this.landscape = landscape;
        this.access = access;
    }

    void write(PageJson page) {
        page.list("lenses", catalog.lenses().values(), lens -> page.object(() -> {
            page.text("id", lens.id());
            page.text("label", lens.label());
        }));
        page.text("bought", access.map(profile -> Phrases.named(profile.id(), profile.label())));
        page.list("ladders", catalog.platforms().values(), platform -> page.object(() -> platform(page, platform)));
    }

    private void platform(PageJson page, Part platform) {
        page.text("platform", platform.id());
        Optional<String> open = Optional.ofNullable(landscape.folded().get(platform.id())).flatMap(folded -> folded.undecided()).map(undecided -> undecided.why());
        page.text("undecided", open);
        Map<String, Climb> climbs = new TreeMap<>();
        if (open.isEmpty() && landscape.platforms().contains(platform.id())) {
            catalog.lenses().forEach((id, lens) -> climbs.put(id, new Climb(landscape, platform.id(), lens, access)));
        }
        page.list("slots", climbs.isEmpty() ? List.<Slot>of() : platform.slots(), slot -> page.object(() -> {
            page.text("slot", slot.id().slot());
            page.list("lenses", catalog.lenses().values(), lens -> ladder(page, lens, climbs.get(lens.id()).within(slot.id(), MOST_STEPS)));
        }));
    }

    private static void ladder(PageJson page, Lens lens, Optional<Ladder> ladder) {
        List<Ladder.Group> simplest = ladder.map(Ladder::simplestFirst).orElse(List.of());
        page.object(() -> {
            page.text("lens", lens.id());
            page.json().writeBooleanProperty("told", ladder.isPresent());
            page.json().writeNumberProperty("left", Math.max(0, simplest.size() - LadderText.MOST_GROUPS));
            page.list("groups", simplest.subList(0, Math.min(LadderText.MOST_GROUPS, simplest.size())), group -> page.object(() -> {
                page.text("serves", group.roles().isEmpty() ? "no role" : Phrases.and(group.roles()));
                page.json().writeArrayPropertyStart("marks");
                group.rungs().forEach(rung -> mark(page, "rung", rung.offer(), rung.step().map(Figures::of).orElse("")));
                group.others().forEach(other -> mark(page, other.standing().word(), other.offer(), ""));
                page.json().writeEndArray();
            }));
        });
    }

    /** Standing, exact cost and benefit, the cost as shown, the step price, and the parts. */
    private static void mark(PageJson page, String standing, Ladder.Offer offer, String step) {
        page.row(() -> {
            page.text(standing);
            page.text(Exact.text(offer.cost()));
            page.text(Exact.text(offer.benefit()));
            page.text(Figures.money(offer.cost()));
            page.text(step);
            page.row(() -> offer.assembly().ifPresent(assembly -> assembly.parts().forEach(page::text)));
        });
    }
}

package fettle.view;

import fettle.catalog.Access;
import fettle.catalog.Catalog;
import fettle.catalog.Lens;
import fettle.catalog.Part;
import fettle.catalog.SlotId;
import fettle.relation.Relations;
import fettle.space.Exact;
import fettle.space.Fraction;
import fettle.space.Landscape;
import fettle.space.worth.Climb;
import fettle.space.worth.Ladder;
import fettle.space.worth.Standing;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * Writes for a report page what slots offer for their price, by lens: every slot of each platform, and of the parts within its reach as many
 * as a page can carry.
 */
final class PageLadders {

    /** A page holds many ladders, and waits for none that is long in the making. */
    private static final long MOST_STEPS = 200_000;

    /** The same for slots on parts, of which there are many more. */
    private static final long MOST_STEPS_OUTWARD = 20_000;

    /** How many ladders of slots on parts a page holds, shared evenly by its platforms. */
    private static final int MOST_OUTWARD = 2_000;

    /** How many marks a plot has besides one for each rung: more could not be told from each other. */
    private static final int MOST_OTHERS = 40;

    private final Catalog catalog;
    private final Relations relations;
    private final Landscape landscape;
    private final Optional<Access> access;
    private final Map<String, Integer> numbers = new HashMap<>();

    PageLadders(Landscape landscape, Optional<Access> access) {
        this.landscape = landscape;
        this.relations = landscape.relations();
        this.catalog = relations.catalog();
        this.access = access;
        catalog.parts().keySet().forEach(part -> numbers.put(part, numbers.size()));
    }

    /** For whom there are ladders, and under which access. */
    void writeLenses(PageJson page) {
        page.list("lenses", catalog.lenses().values(), lens -> page.object(() -> {
            page.text("id", lens.id());
            page.text("label", lens.label());
        }));
        page.text("bought", access.map(profile -> Phrases.named(profile.id(), profile.label())));
    }

    /** The ladders; parts are named by their numbers in the page's list of parts. */
    void write(PageJson page) {
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
        List<SlotId> outward = climbs.isEmpty() ? List.of() : outward(platform);
        int told = catalog.lenses().isEmpty() ? 0 : Math.min(outward.size(), MOST_OUTWARD / catalog.lenses().size() / catalog.platforms().size());
        page.json().writeNumberProperty("left", outward.size() - told);
        page.json().writeArrayPropertyStart("slots");
        if (!climbs.isEmpty()) {
            relations.slots(platform.id()).forEach(slot -> slot(page, slot, climbs, MOST_STEPS));
            outward.subList(0, told).forEach(slot -> slot(page, slot, climbs, MOST_STEPS_OUTWARD));
        }
        page.json().writeEndArray();
    }

    /** The slots on parts within a platform's reach that leave a choice, the nearest first. */
    private List<SlotId> outward(Part platform) {
        List<SlotId> slots = new ArrayList<>();
        Set<Integer> shapes = new HashSet<>();
        List<String> hosts = new ArrayList<>(List.of(platform.id()));
        Set<String> met = new HashSet<>(hosts);
        for (int at = 0; at < hosts.size(); at++) {
            for (SlotId slot : relations.slots(hosts.get(at))) {
                if (at > 0 && relations.candidates(slot).size() > 1) {
                    slots.add(slot);
                }
                if (shapes.add(relations.shape(slot))) {
                    relations.candidates(slot).stream().filter(met::add).forEach(hosts::add);
                }
            }
        }
        return slots;
    }

    private void slot(PageJson page, SlotId slot, Map<String, Climb> climbs, long steps) {
        page.object(() -> {
            page.text("host", slot.host());
            page.text("slot", slot.slot());
            page.list("lenses", catalog.lenses().values(), lens -> ladder(page, lens, climbs.get(lens.id()).within(slot, steps)));
        });
    }

    private void ladder(PageJson page, Lens lens, Optional<Ladder> ladder) {
        List<Ladder.Group> simplest = ladder.map(Ladder::simplestFirst).orElse(List.of());
        page.object(() -> {
            page.text("lens", lens.id());
            page.json().writeBooleanProperty("told", ladder.isPresent());
            page.json().writeNumberProperty("left", Math.max(0, simplest.size() - LadderText.MOST_GROUPS));
            page.list("groups", simplest.subList(0, Math.min(LadderText.MOST_GROUPS, simplest.size())), group -> page.object(() -> group(page, group)));
        });
    }

    private void group(PageJson page, Ladder.Group group) {
        page.text("serves", group.roles().isEmpty() ? "no role" : Phrases.and(group.roles()));
        long alike = group.rungs().stream().mapToLong(rung -> rung.alike().size()).sum();
        page.json().writeNumberProperty("more", Math.max(0, alike + group.others().size() - MOST_OTHERS));
        page.json().writeArrayPropertyStart("marks");
        group.rungs().forEach(rung -> mark(page, Standing.RUNG, rung.offer(), rung.step()));
        group.rungs().stream().flatMap(rung -> rung.alike().stream().map(offer -> new Ladder.Rung(offer, List.of(), rung.step())))
                .limit(MOST_OTHERS)
                .forEach(same -> mark(page, Standing.RUNG, same.offer(), same.step()));
        group.others().stream()
                .sorted(Comparator.comparing(Ladder.Other::standing).thenComparing(other -> other.offer().benefit(), Comparator.reverseOrder()))
                .limit(Math.max(0, MOST_OTHERS - alike))
                .forEach(other -> mark(page, other.standing(), other.offer(), Optional.empty()));
        page.json().writeEndArray();
    }

    /** The number of the standing, exact cost and benefit, the numbers of the parts, and the step price where there is one. */
    private void mark(PageJson page, Standing standing, Ladder.Offer offer, Optional<Fraction> step) {
        page.row(() -> {
            page.json().writeNumber(standing.ordinal());
            page.text(Exact.text(offer.cost()));
            page.text(Exact.text(offer.benefit()));
            page.row(() -> offer.assembly().ifPresent(assembly -> assembly.parts().forEach(part -> page.json().writeNumber(numbers.get(part)))));
            step.map(Figures::of).ifPresent(page::text);
        });
    }
}

package fettle.space;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Fills a slot that can hold several parts: takes the parts that fit one after the other and keeps, for each number of parts and notches used, the classes
 * of what can be in the slot by then. Each list of assemblies is formed once, in the order of the parts, so that order makes no difference to the count.
 */
final class Filling {

    /** A part that fits, with the classes of its assemblies. */
    record Item(int part, int span, Classes assemblies) {}

    /** Counts work, and breaks it off when it is too much. */
    interface Meter {
        void spend(long amount);
    }

    private final Ground ground;
    private final Monitors monitors;
    private final Circuit circuit;
    private final Lenses lenses;
    private final Outlook outlook;
    private final Bounds bounds;
    private final Meter meter;
    private final int shape;
    private final int slot;
    private final Capacity room;

    Filling(Ground ground, int shape, Circuit circuit, Lenses lenses, Outlook outlook, Bounds bounds, Meter meter) {
        this.ground = ground;
        this.monitors = ground.monitors();
        this.circuit = circuit;
        this.lenses = lenses;
        this.outlook = outlook;
        this.bounds = bounds;
        this.meter = meter;
        this.shape = shape;
        this.slot = ground.slotOf(shape);
        this.room = ground.room(shape);
    }

    /** The classes of what can be in the slot, other than nothing. */
    Classes fill(List<Item> fitting) {
        List<Item> items = new ArrayList<>(fitting);
        // Parts that no relation sees come first, while there is but one signature.
        items.sort(Comparator.comparing(item -> ground.insideMonitors(item.part).length > 0 || monitors.sticky(item.part)));
        List<int[]> ahead = ahead(items);
        int[] behind = Numbers.NONE;

        Grid grid = new Grid(items);
        grid.start();
        for (int i = 0; i < items.size(); i++) {
            behind = Numbers.union(behind, decided(items.get(i)));
            grid = grid.with(items.get(i), lenses.lens(ground.insideMonitors(items.get(i).part), outlook.base(), behind, ahead.get(i)));
        }
        return grid.close();
    }

    /** For each item, the events that can still happen once it has been decided. */
    private List<int[]> ahead(List<Item> items) {
        int[][] after = new int[items.size()][];
        int[] events = Numbers.union(outlook.outside(shape), ground.joint(shape));
        for (int i = items.size() - 1; i >= 0; i--) {
            after[i] = events;
            events = Numbers.union(events, ground.inside(items.get(i).part));
        }
        return List.of(after);
    }

    /** The events that an item in the slot can have brought about before the slot is closed. */
    private int[] decided(Item item) {
        int[] events = Arrays.stream(monitors.among(slot, item.part)).filter(event -> monitors.monitorOf(event) < monitors.count()).toArray();
        return Numbers.union(ground.inside(item.part), events);
    }

    /** How often at most an item can stand in the slot. */
    private int copies(Item item) {
        if (room.distinct()) {
            return 1;
        }
        return Math.min(room.most(), room.measured() ? room.notches() / item.span : Capacity.ANY);
    }

    /** The classes by number of parts and notches used. */
    private final class Grid {

        private final boolean counted;
        private final int parts;
        private final int notches;
        private final Classes[][] cells;

        Grid(List<Item> items) {
            long most = 0;
            int shortest = Capacity.ANY;
            for (Item item : items) {
                // Each class of assemblies is taken by itself.
                most += room.distinct() ? 1 : (long) copies(item) * item.assemblies.size();
                shortest = Math.min(shortest, item.span);
            }
            if (room.measured()) {
                most = Math.min(most, room.notches() / shortest);
            }
            // Where no more parts fit in than are allowed, it is enough to know whether there are any.
            this.counted = room.most() < most;
            this.parts = counted ? room.most() : 1;
            this.notches = room.measured() ? room.notches() : 0;
            this.cells = new Classes[parts + 1][notches + 1];
        }

        private Grid(Grid like) {
            this.counted = like.counted;
            this.parts = like.parts;
            this.notches = like.notches;
            this.cells = new Classes[parts + 1][notches + 1];
        }

        void start() {
            for (Classes[] row : cells) {
                Arrays.fill(row, Classes.NONE);
            }
            cells[0][0] = Classes.of(Signature.NOTHING, Circuit.ONE);
        }

        /** The grid once it has been decided how often an item is in the slot. */
        Grid with(Item item, Lens lens) {
            if (room.distinct() || copies(item) == 1 && item.assemblies.size() == 1) {
                return with(item, item.assemblies, 1, lens);
            }
            Grid grid = this;
            for (int i = 0; i < item.assemblies.size(); i++) {
                Classes one = Classes.of(item.assemblies.signatures().get(i), item.assemblies.nodes()[i]);
                // The lens supposes that the item is done with.
                grid = grid.with(item, one, copies(item), i == item.assemblies.size() - 1 ? lens : Lens.CLEAR);
            }
            return grid;
        }

        private Grid with(Item item, Classes assemblies, int most, Lens lens) {
            int[] events = monitors.among(slot, item.part);
            List<Classes> multiples = multiples(assemblies, events, most);
            Classes.Gathered[][] next = new Classes.Gathered[parts + 1][notches + 1];
            for (int p = 0; p <= parts; p++) {
                for (int n = 0; n <= notches; n++) {
                    Classes before = cells[p][n];
                    for (int copies = 0; copies < multiples.size() && before.size() > 0; copies++) {
                        int partsThen = counted ? p + copies : Math.min(1, p + copies);
                        int notchesThen = room.measured() ? n + copies * item.span : 0;
                        if (partsThen > parts || notchesThen > notches) {
                            break;
                        }
                        if (next[partsThen][notchesThen] == null) {
                            next[partsThen][notchesThen] = new Classes.Gathered();
                        }
                        combine(before, multiples.get(copies), lens, next[partsThen][notchesThen]);
                    }
                }
            }
            Grid grid = new Grid(this);
            for (int p = 0; p <= parts; p++) {
                for (int n = 0; n <= notches; n++) {
                    grid.cells[p][n] = next[p][n] == null ? Classes.NONE : next[p][n].classes(circuit::either);
                }
            }
            return grid;
        }

        /** By number of copies from 0 on, what so many assemblies of one class come to; without a bound, until that repeats itself. */
        private List<Classes> multiples(Classes assemblies, int[] events, int most) {
            List<Classes> multiples = new ArrayList<>();
            multiples.add(Classes.of(Signature.NOTHING, Circuit.ONE));
            if (most == 1) {
                List<Signature> signatures = assemblies.signatures().stream().map(signature -> monitors.plus(signature, events)).toList();
                multiples.add(new Classes(signatures, assemblies.nodes()));
                return multiples;
            }
            Signature one = monitors.plus(assemblies.signatures().get(0), events);
            Signature sum = Signature.NOTHING;
            Set<Signature> seen = new HashSet<>();
            for (int copies = 1; copies <= most && (most != Capacity.ANY || seen.add(sum)); copies++) {
                sum = monitors.plus(sum, one);
                multiples.add(Classes.of(sum, circuit.several(assemblies.nodes()[0], copies)));
            }
            return multiples;
        }

        private void combine(Classes one, Classes other, Lens lens, Classes.Gathered into) {
            meter.spend((long) one.size() * other.size());
            for (int i = 0; i < one.size(); i++) {
                for (int j = 0; j < other.size(); j++) {
                    Signature both = lens.see(monitors.plus(one.signatures().get(i), other.signatures().get(j)));
                    if (both != null) {
                        into.add(both, circuit.both(one.nodes()[i], other.nodes()[j]));
                    }
                }
            }
            if (into.size() > bounds.states()) {
                throw new TooLarge(TooLarge.What.STATES, bounds.states()).at(ground.terrain().slots().get(slot).toString());
            }
        }

        /** All cells with at least one part, with the slot in use. */
        Classes close() {
            Lens lens = lenses.lens(ground.insideMonitors(shape), outlook.base(), ground.inside(shape), outlook.outside(shape));
            Classes.Gathered all = new Classes.Gathered();
            for (int p = 1; p <= parts; p++) {
                for (int n = 0; n <= notches; n++) {
                    Classes cell = cells[p][n];
                    for (int i = 0; i < cell.size(); i++) {
                        Signature seen = lens.see(monitors.close(slot, cell.signatures().get(i)));
                        if (seen != null) {
                            all.add(seen, cell.nodes()[i]);
                        }
                    }
                }
            }
            return all.classes(circuit::either);
        }
    }
}

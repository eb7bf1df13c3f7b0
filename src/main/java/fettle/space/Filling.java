package fettle.space;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Fills slots that can hold several parts: takes the parts that fit span by span, those of one span in lots of the same signatures, and keeps for each number
 * of parts and notches used the classes of what can be in the slot by then. Each list of assemblies is formed once, so that order makes no difference to the count.
 *
 * <p>What the parts of one lot or span come to is the same for all slots that hold at most as many of them, and is remembered.
 */
final class Filling {

    /** A part that fits, with the classes of its assemblies. */
    record Item(int part, int span, Classes assemblies) {}

    /** Items of one span whose assemblies have the same signatures once they are in the slot. */
    private record Lot(int[] signatures, List<Item> items) {}

    private record LotKey(List<Integer> signatures, List<Integer> nodes, boolean distinct, int most, Lens lens) {
        // Written out, as in SlotId.
        @Override
        public boolean equals(Object other) {
            return other instanceof LotKey that && distinct == that.distinct && most == that.most && signatures.equals(that.signatures) && nodes.equals(that.nodes) && lens.equals(that.lens);
        }

        @Override
        public int hashCode() {
            return 31 * (31 * (31 * (31 * signatures.hashCode() + nodes.hashCode()) + Boolean.hashCode(distinct)) + most) + lens.hashCode();
        }
    }

    private record ProductKey(List<Row> rows, List<Lens> lenses, int most, int notches) {
        @Override
        public boolean equals(Object other) {
            return other instanceof ProductKey key && most == key.most && notches == key.notches && lenses.equals(key.lenses) && same(rows, key.rows);
        }

        private static boolean same(List<Row> one, List<Row> other) {
            for (int i = 0; i < one.size(); i++) {
                if (one.get(i) != other.get(i)) {
                    return false;
                }
            }
            return true;
        }

        @Override
        public int hashCode() {
            int hash = 31 * (31 * lenses.hashCode() + most) + notches;
            for (Row row : rows) {
                hash = 31 * hash + System.identityHashCode(row);
            }
            return hash;
        }
    }

    private final Ground ground;
    private final Monitors monitors;
    private final Lenses lenses;
    private final Combining combining;
    private final Signatures signatures;
    private final Map<LotKey, Row> known = new HashMap<>();
    private final Map<ProductKey, Row> products = new HashMap<>();

    Filling(Ground ground, Lenses lenses, Combining combining) {
        this.ground = ground;
        this.monitors = ground.monitors();
        this.lenses = lenses;
        this.combining = combining;
        this.signatures = combining.signatures();
    }

    /** The classes of what can be in a slot of some shape, other than nothing. */
    Classes fill(int shape, List<Item> items, Outlook outlook) {
        return new Slot(shape, outlook).fill(items);
    }

    /** The filling of one slot. */
    private final class Slot {

        private final int shape;
        private final int slot;
        private final Capacity room;
        private final Outlook outlook;
        /** Those of the longest slot for the same parts, so that shorter ones can share the work. */
        private final int notches;

        Slot(int shape, Outlook outlook) {
            this.shape = shape;
            this.slot = ground.slotOf(shape);
            this.room = ground.room(shape);
            this.outlook = outlook;
            this.notches = room.measured() ? outlook.longest(shape) : 0;
        }

        Classes fill(List<Item> items) {
            Map<Integer, List<Item>> bySpan = new TreeMap<>();
            items.forEach(item -> bySpan.computeIfAbsent(room.measured() ? item.span : 0, unused -> new ArrayList<>()).add(item));
            List<List<Item>> spans = List.copyOf(bySpan.values());
            int[] outside = Numbers.union(outlook.outside(shape), ground.joint(shape));
            List<Row> rows = new ArrayList<>();
            List<Lens> after = new ArrayList<>();
            int[] behind = Numbers.NONE;
            for (int i = 0; i < spans.size(); i++) {
                int[] ahead = outside;
                for (int later = i + 1; later < spans.size(); later++) {
                    ahead = Numbers.union(ahead, decided(spans.get(later)));
                }
                int[] own = decided(spans.get(i));
                rows.add(ofSpan(spans.get(i), Numbers.union(behind, ahead)));
                behind = Numbers.union(behind, own);
                after.add(lenses.lens(monitors.monitorsOf(own), outlook.base(), behind, ahead));
            }
            int most = most(items);
            Row all = products.computeIfAbsent(new ProductKey(rows, after, most, notches), unused -> {
                Row product = Row.empty(most, notches);
                for (int i = 0; i < rows.size(); i++) {
                    product = product.times(stretched(rows.get(i), spans.get(i).get(0).span), after.get(i), combining);
                }
                return product;
            });
            return close(all);
        }

        /** What items of one span come to, by their number. */
        private Row ofSpan(List<Item> items, int[] outside) {
            List<Lot> lots = lots(items);
            int[][] ahead = new int[lots.size()][];
            int[] events = outside;
            for (int i = lots.size() - 1; i >= 0; i--) {
                ahead[i] = events;
                events = Numbers.union(events, decided(lots.get(i).items));
            }
            List<Row> rows = new ArrayList<>();
            List<Lens> after = new ArrayList<>();
            int[] behind = Numbers.NONE;
            for (int i = 0; i < lots.size(); i++) {
                int[] own = decided(lots.get(i).items);
                int[] touched = monitors.monitorsOf(own);
                Lens within = lenses.lens(touched, outlook.base(), own, Numbers.union(Numbers.union(own, behind), ahead[i]));
                rows.add(row(lots.get(i), within));
                behind = Numbers.union(behind, own);
                after.add(lenses.lens(touched, outlook.base(), behind, ahead[i]));
            }
            int most = mostOf(items);
            return products.computeIfAbsent(new ProductKey(rows, after, most, 0), unused -> {
                Row product = Row.empty(most, 0);
                for (int i = 0; i < rows.size(); i++) {
                    product = product.times(rows.get(i), after.get(i), combining);
                }
                return product;
            });
        }

        /** The same with the notches that the parts take. */
        private Row stretched(Row byNumber, int span) {
            Map<Row.Used, Classes> cells = new TreeMap<>();
            byNumber.cells().forEach((used, classes) -> cells.put(new Row.Used(used.parts(), room.measured() ? used.parts() * span : 0), classes));
            return new Row(byNumber.most(), notches, cells);
        }

        /** How many parts of one span can be in the slot. */
        private int mostOf(List<Item> items) {
            int most = Math.min(room.most(), room.measured() ? notches / items.get(0).span : Capacity.ANY);
            return room.distinct() ? Math.min(most, items.size()) : most;
        }

        /** How many parts can be in the slot; where the notches alone see to it, they need not be counted. */
        private int most(List<Item> items) {
            long fit = 0;
            int shortest = Capacity.ANY;
            for (Item item : items) {
                fit += room.distinct() ? 1 : (long) copies(item) * item.assemblies.size();
                shortest = Math.min(shortest, item.span);
            }
            if (room.measured()) {
                fit = Math.min(fit, notches / shortest);
            }
            return room.most() < fit ? room.most() : Capacity.ANY;
        }

        private int copies(Item item) {
            return room.distinct() ? 1 : Math.min(room.most(), room.measured() ? notches / item.span : Capacity.ANY);
        }

        /** Lots in a fixed order: those that no relation sees come first, while there is but one signature. */
        private List<Lot> lots(List<Item> items) {
            Map<List<Integer>, Lot> lots = new LinkedHashMap<>();
            for (Item item : items) {
                int[] events = monitors.among(slot, item.part);
                int[] sums = Arrays.stream(item.assemblies.signatures()).map(signature -> signatures.plus(signature, events)).toArray();
                lots.computeIfAbsent(Arrays.stream(sums).boxed().toList(), unused -> new Lot(sums, new ArrayList<>())).items.add(item);
            }
            List<Lot> ordered = new ArrayList<>(lots.values());
            ordered.sort((one, other) -> Boolean.compare(decided(one.items).length > 0, decided(other.items).length > 0));
            return ordered;
        }

        /** The events that items in the slot can bring about before the slot is closed. */
        private int[] decided(List<Item> items) {
            int[] events = Numbers.NONE;
            for (Item item : items) {
                events = Numbers.union(events, ground.inside(item.part));
                if (monitors.sticky(item.part)) {
                    int[] bare = Arrays.stream(monitors.among(slot, item.part)).filter(event -> monitors.monitorOf(event) < monitors.count()).toArray();
                    events = Numbers.union(events, bare);
                }
            }
            return events;
        }

        /** What a lot comes to, by the number of parts. */
        private Row row(Lot lot, Lens lens) {
            int most = mostOf(lot.items);
            List<Integer> nodes = new ArrayList<>();
            lot.items.forEach(item -> Arrays.stream(item.assemblies.nodes()).forEach(nodes::add));
            LotKey key = new LotKey(Arrays.stream(lot.signatures).boxed().toList(), nodes, room.distinct(), most, lens);
            return known.computeIfAbsent(key, unused -> byNumber(lot, most, lens));
        }

        private Row byNumber(Lot lot, int most, Lens lens) {
            Row row = Row.empty(most, 0);
            for (Item item : lot.items) {
                if (room.distinct()) {
                    Map<Row.Used, Classes> oneOrNone = new TreeMap<>(Map.of(new Row.Used(0, 0), Classes.EMPTY));
                    oneOrNone.put(new Row.Used(1, 0), new Classes(lot.signatures, item.assemblies.nodes()));
                    row = row.times(new Row(most, 0, oneOrNone), lens, combining);
                } else {
                    for (int i = 0; i < lot.signatures.length; i++) {
                        row = row.times(several(lot.signatures[i], item.assemblies.nodes()[i], most), lens, combining);
                    }
                }
            }
            return row;
        }

        /** Any number of assemblies of one class; without a bound, until their sum repeats itself. */
        private Row several(int signature, int node, int most) {
            Map<Row.Used, Classes> cells = new TreeMap<>();
            int sum = Signatures.NOTHING;
            Set<Integer> seen = new HashSet<>();
            for (int copies = 0; copies <= most && (most != Capacity.ANY || copies == 0 || seen.add(sum)); copies++) {
                combining.spend(1);
                cells.put(new Row.Used(copies, 0), Classes.of(sum, combining.circuit().several(node, copies)));
                sum = signatures.plus(sum, signature);
            }
            return new Row(most, 0, cells);
        }

        /** Everything with at least one part, with the slot in use. */
        private Classes close(Row all) {
            Lens lens = lenses.lens(ground.insideMonitors(shape), outlook.base(), ground.inside(shape), outlook.outside(shape));
            Gathering closed = combining.gathering();
            all.filled(room.notches()).forEach(cell -> {
                for (int i = 0; i < cell.size(); i++) {
                    int whole = signatures.number(monitors.close(slot, signatures.get(cell.signatures()[i])));
                    int seen = signatures.see(lens, whole);
                    if (seen != Signatures.HOPELESS) {
                        closed.add(seen, cell.nodes()[i]);
                    }
                }
            });
            return closed.classes();
        }
    }
}

package fettle.space.worth;

import fettle.space.Circuit;
import fettle.space.Held;
import fettle.space.Stand;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Makes boxes out of what stands in a slot, bounds what their assemblies bring, and splits them. */
final class Boxes {

    private final Arena arena;
    private final Circuit circuit;
    private final Measure measure;

    Boxes(Arena arena) {
        this.arena = arena;
        this.circuit = arena.circuit();
        this.measure = arena.measure();
    }

    /** The boxes that together hold all assemblies of a stand that take part in the comparison. */
    List<Box> of(Stand stand) {
        Yield head = measure.ofPart(stand.head());
        List<Box> boxes = new ArrayList<>();
        int on = circuit.second(stand.node());
        if (circuit.kind(on) == Circuit.Kind.EITHER && Factor.of(circuit, on, measure.ofNothing()).get(0).held().isEmpty()) {
            for (int i = 0; i < circuit.width(on); i++) {
                add(head, circuit.alternative(on, i), boxes);
            }
        } else {
            add(head, on, boxes);
        }
        return boxes;
    }

    private void add(Yield head, int node, List<Box> boxes) {
        if (arena.ideal(node) != null) {
            boxes.add(new Box(head, Factor.of(circuit, node, measure.ofNothing())));
        }
    }

    /** The best that an assembly of a box brings. */
    Yield best(Box box) {
        Yield best = box.head();
        for (Factor factor : box.factors()) {
            best = measure.both(best, best(factor));
        }
        return best;
    }

    /** The best that a choice of a factor brings. */
    Yield best(Factor factor) {
        Yield best = factor.fixed();
        for (int node : factor.open()) {
            best = measure.both(best, arena.ideal(node));
        }
        return best;
    }

    /** The boxes in which one of a box's factors is decided further, those first that reach the bound in most columns. */
    List<Box> split(Box box, int which) {
        List<Factor> others = new ArrayList<>(box.factors());
        Factor factor = others.remove(which);
        Yield bound = best(factor);
        List<Box> boxes = new ArrayList<>();
        List<Integer> reached = new ArrayList<>();
        for (List<Factor> choice : choices(factor)) {
            Yield best = measure.ofNothing();
            for (Factor part : choice) {
                best = measure.both(best, best(part));
            }
            List<Factor> all = new ArrayList<>(others);
            all.addAll(choice);
            boxes.add(new Box(box.head(), all));
            reached.add(measure.reached(best, bound));
        }
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < boxes.size(); i++) {
            order.add(i);
        }
        order.sort(Comparator.comparing(reached::get, Comparator.reverseOrder()));
        return order.stream().map(boxes::get).toList();
    }

    private List<List<Factor>> choices(Factor factor) {
        List<List<Factor>> choices = new ArrayList<>();
        int node = factor.open().get(0);
        if (factor.held().isEmpty()) {
            for (int i = 0; i < circuit.width(node); i++) {
                int alternative = circuit.alternative(node, i);
                if (arena.ideal(alternative) != null) {
                    choices.add(Factor.of(circuit, alternative, measure.ofNothing()));
                }
            }
            return choices;
        }
        Held held = factor.held().get();
        if (circuit.kind(node) == Circuit.Kind.EITHER && held.uses().contains(circuit.alternative(node, circuit.width(node) - 1))) {
            for (int i = 0; i < circuit.width(node); i++) {
                int use = circuit.alternative(node, i);
                if (use == Circuit.ONE) {
                    choices.add(List.of());
                } else if (arena.ideal(use) != null) {
                    choices.addAll(contents(new Factor(Optional.of(new Held(held.slot(), List.of(use), false)), factor.fixed(), List.of(use))));
                }
            }
            return choices;
        }
        return contents(factor);
    }

    /** One step further with what is in a slot. */
    private List<List<Factor>> contents(Factor factor) {
        int node = factor.open().get(0);
        List<Integer> rest = factor.open().subList(1, factor.open().size());
        Optional<List<Point>> front = arena.fronts().of(node);
        List<List<Factor>> choices = new ArrayList<>();
        if (front.isPresent()) {
            front.get().forEach(point -> choices.add(List.of(new Factor(factor.held(), measure.both(factor.fixed(), point.yield()), rest))));
            return choices;
        }
        int first = circuit.first(node);
        int second = circuit.second(node);
        switch (circuit.kind(node)) {
            case SLOT -> choices.add(with(factor, measure.ofNothing(), rest, second));
            case PART -> choices.add(with(factor, measure.ofPart(first), rest, second));
            case BOTH -> choices.add(with(factor, measure.ofNothing(), rest, first, second));
            case SEVERAL -> {
                int[] copies = new int[second];
                java.util.Arrays.fill(copies, first);
                choices.add(with(factor, measure.ofNothing(), rest, copies));
            }
            case EITHER -> {
                for (int i = 0; i < circuit.width(node); i++) {
                    if (arena.ideal(circuit.alternative(node, i)) != null) {
                        choices.add(with(factor, measure.ofNothing(), rest, circuit.alternative(node, i)));
                    }
                }
            }
            case ONE -> throw new IllegalStateException("nothing has a front");
        }
        return choices;
    }

    private List<Factor> with(Factor factor, Yield more, List<Integer> rest, int... nodes) {
        List<Integer> open = new ArrayList<>();
        for (int node : nodes) {
            open.add(node);
        }
        open.addAll(rest);
        return List.of(new Factor(factor.held(), measure.both(factor.fixed(), more), open));
    }
}

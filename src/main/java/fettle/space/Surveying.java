package fettle.space;

import fettle.catalog.Catalog;
import fettle.catalog.SlotId;
import fettle.document.DeepStack;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.IntStream;

/** Asks a circuit all that a survey tells, of several platforms at a time. */
final class Surveying {

    private final Catalog catalog;
    private final Terrain terrain;
    private final Circuit circuit;
    private final int[] platforms;
    private final int[] roots;

    /**
     * A survey of some platforms that are not void.
     *
     * @param platforms their numbers
     * @param roots by platform, the node of all its builds
     */
    Surveying(Catalog catalog, Terrain terrain, Circuit circuit, int[] platforms, int[] roots) {
        this.catalog = catalog;
        this.terrain = terrain;
        this.circuit = circuit;
        this.platforms = platforms;
        this.roots = roots;
    }

    List<Survey> surveys() {
        Sweep sweep = Sweep.of(circuit, roots);
        BigInteger[] counts = new BigInteger[roots.length];
        int[][] essential = new int[roots.length][];
        Presence[] presence = new Presence[1 + (roots.length - 1) / Presence.MOST];
        Ranges ranges = new Ranges(catalog, terrain, circuit, platforms, roots, sweep);
        List<Runnable> questions = new ArrayList<>(ranges.questions());
        for (int i = 0; i < presence.length; i++) {
            int lot = i;
            int[] some = Arrays.copyOfRange(roots, lot * Presence.MOST, Math.min(roots.length, (lot + 1) * Presence.MOST));
            questions.add(() -> presence[lot] = Presence.of(terrain, circuit, some));
        }
        questions.add(() -> answer(new Counting(), sweep, counts));
        questions.add(() -> answer(new InAll(), sweep, essential));
        // None knows of another, and each forgets all but what it says of the roots.
        DeepStack.each(questions, question -> {
            question.run();
            return question;
        });
        List<SortedMap<String, Range>> found = ranges.ranges();
        List<Integer> order = IntStream.range(0, platforms.length).boxed().toList();
        return DeepStack.each(order, i -> survey(i, counts[i], essential[i], presence[i / Presence.MOST], found.get(i)));
    }

    private <V> void answer(Algebra<V> algebra, Sweep sweep, V[] answers) {
        Evaluation<V> evaluation = Evaluation.of(circuit, algebra, sweep);
        for (int i = 0; i < roots.length; i++) {
            answers[i] = evaluation.of(roots[i]);
        }
    }

    private Survey survey(int platform, BigInteger count, int[] essential, Presence presence, SortedMap<String, Range> ranges) {
        Reach reach = Reach.of(terrain, platforms[platform]);
        SortedSet<String> dead = reach.partsBut(presence.parts(platform % Presence.MOST));
        SortedSet<SlotId> deadSlots = reach.slotsBut(presence.slots(platform % Presence.MOST));
        SortedSet<String> always = new TreeSet<>(Arrays.stream(essential).mapToObj(terrain.hosts()::get).toList());
        return new Survey.Known(terrain.hosts().get(platforms[platform]), reach.partNames(), count, dead, always, deadSlots, ranges);
    }
}

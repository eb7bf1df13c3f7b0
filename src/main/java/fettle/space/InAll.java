package fettle.space;

/** The parts that stand in each of them, as a sorted array of numbers. */
final class InAll implements Algebra<int[]> {

    @Override
    public int[] one() {
        return Numbers.NONE;
    }

    @Override
    public int[] part(int part) {
        return new int[] {part};
    }

    @Override
    public int[] both(int[] one, int[] other) {
        return Numbers.union(one, other);
    }

    @Override
    public int[] either(int[] one, int[] other) {
        return Numbers.intersection(one, other);
    }

    @Override
    public int[] several(int[] of, int copies) {
        return of;
    }
}

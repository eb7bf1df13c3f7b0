package fettle.space;

/**
 * What to ask of a set of assemblies, worked out from what it is made of.
 *
 * <p>Laws, for all values that can arise: {@code both} and {@code either} are associative and commutative; {@code both(one(), v)} is {@code v};
 * {@code both} distributes over {@code either}; {@code several(v, 1)} is {@code v}. {@code either} is only asked about sets without a common element.
 *
 * @param <V> the answer
 */
public interface Algebra<V> {

    /** Of nothing placed: the set of the one empty choice. */
    V one();

    /** Of a part by itself. */
    V part(int part);

    /** Of a slot's contents, given the answer for the contents by themselves; most questions don't care which slot it is. */
    default V slot(int slot, V contents) {
        return contents;
    }

    /** Of each from one set together with each from another. */
    V both(V one, V other);

    /** Of the union of two sets. */
    V either(V one, V other);

    /**
     * Of {@code copies} assemblies of the same set, in no order and the same one any number of times; at least 2. Where {@code either} forgets repetitions, as
     * least, greatest, union and intersection do, this is the same as taking them in order.
     */
    default V several(V of, int copies) {
        V all = of;
        for (int i = 1; i < copies; i++) {
            all = both(all, of);
        }
        return all;
    }
}

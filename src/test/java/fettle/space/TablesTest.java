package fettle.space;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Tables answer what a map would. */
class TablesTest {

    private record Put(int one, int other, int value) {}

    /** Small numbers, so that some come again, and large ones. */
    @Provide
    static Arbitrary<List<Put>> puts() {
        Arbitrary<Integer> numbers = Arbitraries.oneOf(Arbitraries.integers().between(0, 20), Arbitraries.integers().between(0, 2_000_000));
        return Combinators.combine(numbers, numbers, numbers).as(Put::new).list().ofMaxSize(300);
    }

    @Property(tries = 200)
    void a_table_of_pairs_answers_what_was_put_last(@ForAll("puts") List<Put> puts) {
        PairTable table = new PairTable();
        Map<List<Integer>, Integer> map = new HashMap<>();
        for (Put put : puts) {
            assertEquals(map.getOrDefault(List.of(put.one, put.other), PairTable.NONE), table.get(put.one, put.other));
            table.put(put.one, put.other, put.value);
            map.put(List.of(put.one, put.other), put.value);
        }
        map.forEach((pair, value) -> assertEquals(value, table.get(pair.get(0), pair.get(1))));
    }

    @Property(tries = 200)
    void a_table_of_nodes_answers_what_was_put_last(@ForAll("puts") List<Put> puts) {
        NodeTable table = new NodeTable();
        Map<Integer, Integer> map = new HashMap<>();
        for (Put put : puts) {
            assertEquals(map.getOrDefault(put.one, NodeTable.NONE), table.get(put.one));
            table.put(put.one, put.value);
            map.put(put.one, put.value);
        }
        map.forEach((node, value) -> assertEquals(value, table.get(node)));
    }

    @Property(tries = 200)
    void numbers_contain_what_a_set_of_them_does(@ForAll("puts") List<Put> puts) {
        int[] all = puts.stream().mapToInt(Put::one).sorted().distinct().toArray();
        int[] some = puts.stream().mapToInt(Put::other).sorted().distinct().toArray();
        int[] shared = Numbers.intersection(all, some);
        assertEquals(shared.length == some.length, Numbers.contains(all, some));
        assertEquals(true, Numbers.contains(all, shared));
    }
}

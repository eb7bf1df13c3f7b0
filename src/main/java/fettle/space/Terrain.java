package fettle.space;

import fettle.catalog.SlotId;
import fettle.relation.Relations;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * What can hang on what, by numbers: parts come first, then platforms; slots are numbered in the order of their hosts. The arrays are not to be
 * changed.
 *
 * @param parts how many of the hosts are parts
 * @param hosts ids by number
 * @param numbers numbers by id
 * @param slotsOf by host, its slots
 * @param slots by slot, its name
 * @param owner by slot, its host
 * @param candidates by slot, the parts that fit it, in rising order; slots that fit the same parts share the array
 * @param room by slot, how much it holds, as far as that makes a difference to what fits it
 * @param span by part, the notches it takes
 * @param turns by part, how often it may stand on one path from the platform; {@link #ENDLESS} where nothing is said
 */
public record Terrain(
        int parts,
        List<String> hosts,
        Map<String, Integer> numbers,
        int[][] slotsOf,
        List<SlotId> slots,
        int[] owner,
        int[][] candidates,
        Capacity[] room,
        int[] span,
        int[] turns) {

    static final int ENDLESS = Integer.MAX_VALUE;

    static Terrain of(Relations relations) {
        List<String> hosts = new ArrayList<>(relations.catalog().parts().keySet());
        int parts = hosts.size();
        hosts.addAll(relations.catalog().platforms().keySet());
        Map<String, Integer> numbers = new HashMap<>();
        hosts.forEach(host -> numbers.put(host, numbers.size()));

        int[][] slotsOf = new int[hosts.size()][];
        List<SlotId> slots = new ArrayList<>();
        List<Integer> owner = new ArrayList<>();
        List<int[]> candidates = new ArrayList<>();
        List<Capacity> room = new ArrayList<>();
        Map<List<String>, int[]> lists = new HashMap<>();
        int[] span = IntStream.range(0, parts).map(p -> relations.span(hosts.get(p))).toArray();
        for (int h = 0; h < slotsOf.length; h++) {
            List<SlotId> named = relations.slots(hosts.get(h));
            slotsOf[h] = new int[named.size()];
            for (int i = 0; i < slotsOf[h].length; i++) {
                SlotId slot = named.get(i);
                slotsOf[h][i] = slots.size();
                slots.add(slot);
                owner.add(h);
                int[] fitting = lists.computeIfAbsent(relations.candidates(slot), names -> numbered(names, numbers, parts));
                candidates.add(fitting);
                room.add(Capacity.of(relations.room(slot).rules()).upTo(Arrays.stream(fitting).map(part -> span[part]).max().orElse(0)));
            }
        }
        int[] turns = new int[parts];
        for (int p = 0; p < parts; p++) {
            turns[p] = relations.noReentry(hosts.get(p)).isPresent() ? 1 : ENDLESS;
        }
        return new Terrain(
                parts, List.copyOf(hosts), numbers, slotsOf, List.copyOf(slots), owner.stream().mapToInt(Integer::intValue).toArray(),
                candidates.toArray(new int[0][]), room.toArray(new Capacity[0]), span, turns);
    }

    private static int[] numbered(Collection<String> names, Map<String, Integer> numbers, int parts) {
        return names.stream().mapToInt(name -> numbers.getOrDefault(name, parts)).filter(number -> number < parts).sorted().toArray();
    }

    public boolean isPart(int host) {
        return host < parts;
    }

    public int number(String host) {
        return numbers.get(host);
    }
}

package fettle.space;

import java.util.Arrays;

/** By part, the slots that it fits, whatever they are on; once for all platforms, since they are many. */
final class Takers {

    private final int[][] slotsOf;

    Takers(Terrain terrain) {
        slotsOf = new int[terrain.parts()][];
        int[] counts = new int[terrain.parts()];
        for (int[] candidates : terrain.candidates()) {
            for (int part : candidates) {
                counts[part]++;
            }
        }
        Arrays.setAll(slotsOf, part -> new int[counts[part]]);
        for (int slot = terrain.slots().size() - 1; slot >= 0; slot--) {
            for (int part : terrain.candidates()[slot]) {
                slotsOf[part][--counts[part]] = slot;
            }
        }
    }

    /** In rising order; nobody changes it. */
    int[] of(int part) {
        return slotsOf[part];
    }
}

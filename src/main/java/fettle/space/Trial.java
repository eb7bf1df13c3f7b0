package fettle.space;

import java.util.Arrays;

/** A build being tried: placed parts with the slots they are in, at most one in each; hosts stand before what is on them. */
final class Trial {

    /** The number by which the platform is the host of a placed part. */
    static final int ROOT = -1;

    private final int platform;
    private int[] part = new int[16];
    private int[] slot = new int[16];
    private int[] host = new int[16];
    private int size;

    Trial(int platform) {
        this.platform = platform;
    }

    int platform() {
        return platform;
    }

    int size() {
        return size;
    }

    int part(int placed) {
        return part[placed];
    }

    int slot(int placed) {
        return slot[placed];
    }

    /** The placed part that bears the slot, or {@link #ROOT}. */
    int host(int placed) {
        return host[placed];
    }

    /** The number of the part or platform. */
    int number(int placed) {
        return placed == ROOT ? platform : part[placed];
    }

    /** What is in a slot of a placed part or the platform; {@code -2} where nothing is. */
    int in(int bearer, int wanted) {
        for (int i = 0; i < size; i++) {
            if (host[i] == bearer && slot[i] == wanted) {
                return i;
            }
        }
        return -2;
    }

    /** Whether a part stands here or above. */
    boolean stands(int at, int wanted) {
        for (int i = at; i != ROOT; i = host[i]) {
            if (part[i] == wanted) {
                return true;
            }
        }
        return false;
    }

    int add(int bearer, int into, int placed) {
        if (size == part.length) {
            part = Arrays.copyOf(part, 2 * size);
            slot = Arrays.copyOf(slot, 2 * size);
            host = Arrays.copyOf(host, 2 * size);
        }
        part[size] = placed;
        slot[size] = into;
        host[size] = bearer;
        return size++;
    }

    /** Takes out all that was added since the trial had this size. */
    void shrink(int to) {
        size = to;
    }
}

package fettle.space.best;

import fettle.catalog.Build;
import fettle.space.BuildResult;
import fettle.space.ClosedList;
import fettle.space.PathMove;
import java.math.BigDecimal;
import java.util.List;
import java.util.SortedMap;

/**
 * Another assembly in one place of a build, which gives a valid build.
 *
 * @param prospect what it comes to
 * @param after the build with the swap made
 * @param limitsBroken limits that would be exceeded, and are not now or by less
 * @param notchesDropped paths, in the build as it is, at which a notch is stated that the build must do without then
 */
public record Swap(Prospect prospect, BuildResult after, List<String> limitsBroken, List<String> notchesDropped) {

    public Swap {
        notchesDropped = List.copyOf(notchesDropped);
        limitsBroken = List.copyOf(limitsBroken);
    }

    /** {@link Prospect#path}. */
    public String path() {
        return prospect.path();
    }

    /** {@link Prospect#from}. */
    public SortedMap<String, String> from() {
        return prospect.from();
    }

    /** {@link Prospect#to}. */
    public SortedMap<String, String> to() {
        return prospect.to();
    }

    /** {@link Prospect#benefit}. */
    public BigDecimal benefit() {
        return prospect.benefit();
    }

    /** {@link Prospect#gain}. */
    public BigDecimal gain() {
        return prospect.gain();
    }

    /** {@link Prospect#buy}. */
    public List<Purchase> buy() {
        return prospect.buy();
    }

    /** {@link Prospect#price}. */
    public BigDecimal price() {
        return prospect.price();
    }

    /** {@link Prospect#carried}. */
    public List<String> carried() {
        return prospect.carried();
    }

    /** {@link Prospect#lost}. */
    public List<String> lost() {
        return prospect.lost();
    }

    /** What a build that the swap is made in must write at another path then, since parts behind one that is taken out of a list move up. */
    public List<PathMove> movedUp(Build before) {
        return to().isEmpty() ? ClosedList.moves(before, path()) : List.of();
    }

    /** {@link Prospect#rolesLost}. */
    public List<String> rolesLost() {
        return prospect.rolesLost();
    }

    /** {@link Prospect#rolesElsewhere}. */
    public List<String> rolesElsewhere() {
        return prospect.rolesElsewhere();
    }

    /** Whether it serves all that the build serves now and takes the build past no limit, nor farther past one. */
    public boolean sound() {
        return rolesLost().isEmpty() && limitsBroken.isEmpty();
    }
}

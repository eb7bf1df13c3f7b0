package fettle.space;

import fettle.catalog.Build;
import fettle.catalog.BuildEntry;
import java.util.ArrayList;
import java.util.List;

/** What becomes of paths where a part is taken out of a list: those of what is on the parts behind it. */
public final class ClosedList {

    private ClosedList() {}

    /** What a build must write at another path once nothing is at one, in the order in which it is written; nothing where that is in no list, or last there. */
    public static List<PathMove> moves(Build build, String emptied) {
        int colon = emptied.lastIndexOf(':');
        if (colon < 0 || emptied.indexOf('/', colon) >= 0) {
            return List.of();
        }
        String list = emptied.substring(0, colon + 1);
        int position = Integer.parseInt(emptied.substring(colon + 1));
        List<PathMove> moves = new ArrayList<>();
        for (BuildEntry entry : build.parts()) {
            int slash = entry.path().indexOf('/', list.length());
            if (entry.path().startsWith(list) && slash >= 0) {
                int behind = Integer.parseInt(entry.path().substring(list.length(), slash));
                if (behind > position) {
                    moves.add(new PathMove(entry.path(), list + (behind - 1) + entry.path().substring(slash)));
                }
            }
        }
        return moves;
    }
}

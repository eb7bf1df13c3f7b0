package fettle.space.patch;

import fettle.catalog.SlotId;
import fettle.relation.Relations;
import fettle.space.PathMove;
import java.util.ArrayList;
import java.util.List;

/**
 * Seats of a repaired build as builds write them.
 *
 * @param platform of the repaired build
 * @param moved the build before its repair
 */
record RepairPaths(Relations now, String platform, MovedSlots moved, Arrangement repaired) {

    /** A seat, with a position only where the slot may hold several parts, or a list stands there. */
    String of(String seat) {
        PathMove move = moved.paths().get(seat);
        if (move != null && !rewritten().contains(move)) {
            // Nothing is left of the slot to be written elsewhere, so it is still at the path that the build has.
            int colon = seat.lastIndexOf(':');
            return move.from() + (moved.start().at(seat.substring(0, colon) + ":1").isPresent() ? seat.substring(colon) : "");
        }
        StringBuilder path = new StringBuilder();
        String host = platform;
        String walked = "";
        for (String segment : seat.split("/")) {
            String slot = walked.isEmpty() ? Arrangement.slot(segment) : walked + "/" + Arrangement.slot(segment);
            walked = walked.isEmpty() ? segment : walked + "/" + segment;
            SlotId id = new SlotId(host, Arrangement.slot(segment));
            boolean several = !segment.endsWith(":0") || moved.start().at(slot + ":1").isPresent() || now.slot(id).isPresent() && now.room(id).most() > 1;
            path.append(path.length() == 0 ? "" : "/").append(several ? segment : id.slot());
            String here = walked;
            host = repaired.at(here).or(() -> moved.start().at(here)).orElse("");
        }
        return path.toString();
    }

    /** What is written at another path, since slots were renamed. */
    List<PathMove> rewritten() {
        return moved.kept(repaired);
    }

    /** What is to be written at another path, since a part is taken out of a list before what bears it. */
    List<PathMove> movedUp() {
        List<PathMove> moves = new ArrayList<>();
        repaired.closedUp().forEach((seat, closed) -> {
            if (seat.contains("/") && !seat.equals(closed)) {
                String path = of(seat);
                String[] positions = closed.split("/");
                String[] segments = path.split("/");
                for (int i = 0; i < segments.length; i++) {
                    segments[i] = segments[i].contains(":") ? positions[i] : segments[i];
                }
                moves.add(new PathMove(path, String.join("/", segments)));
            }
        });
        return moves;
    }
}

package fettle.space.patch;

import fettle.catalog.BuildEntry;
import fettle.document.Origin;
import fettle.space.Occurrence;
import fettle.space.Placement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * A build as a map from seats to parts. A seat is a path in which every slot names a position, such as {@code rail:1/lens:0}, so that a part keeps its
 * seat whatever becomes of its neighbours. Notches are no part of it: builds that differ in them alone are the same.
 */
record Arrangement(SortedMap<String, String> seats) {

    private static final Origin NOWHERE = Origin.startOf("");

    Arrangement {
        seats = Collections.unmodifiableSortedMap(new TreeMap<>(seats));
    }

    /** The placed parts of a build by seat. */
    static Arrangement of(Placement placement) {
        return new Arrangement(new TreeMap<>(seats(placement)));
    }

    /** The part in each seat, in the order of the placed parts. */
    private static Map<String, String> seats(Placement placement) {
        List<String> names = new ArrayList<>();
        Map<String, String> seats = new LinkedHashMap<>();
        for (Occurrence part : placement.parts()) {
            int host = placement.hostOf(part);
            String slot = placement.slotOf(part).slot().slot();
            String seat = (host == Placement.PLATFORM ? "" : names.get(host) + "/") + slot + ":" + part.entry().position();
            names.add(seat);
            seats.put(seat, part.part());
        }
        return seats;
    }

    /**
     * The same as entries of a build.
     *
     * @param notches the first notch of the part in a seat, for those whose notch is stated
     */
    List<BuildEntry> entries(Map<String, Integer> notches) {
        List<BuildEntry> entries = new ArrayList<>();
        seats.forEach((seat, part) -> {
            int colon = seat.lastIndexOf(':');
            OptionalInt at = notches.containsKey(seat) ? OptionalInt.of(notches.get(seat)) : OptionalInt.empty();
            entries.add(new BuildEntry(seat.substring(0, colon), Integer.parseInt(seat.substring(colon + 1)), part, at, NOWHERE, NOWHERE));
        });
        return entries;
    }

    /** The seat of an entry made by {@link #entries}. */
    static String seat(BuildEntry entry) {
        return entry.path() + ":" + entry.position();
    }

    /** The seat that bears the slot of this one; empty where that is the platform. */
    static Optional<String> above(String seat) {
        int cut = seat.lastIndexOf('/');
        return cut < 0 ? Optional.empty() : Optional.of(seat.substring(0, cut));
    }

    /** Each seat as it is once the parts of every list stand without gaps, in the same order. */
    SortedMap<String, String> closedUp() {
        Map<String, SortedSet<Integer>> positions = new HashMap<>();
        seats.keySet().forEach(seat -> {
            int colon = seat.lastIndexOf(':');
            positions.computeIfAbsent(seat.substring(0, colon), unused -> new TreeSet<>()).add(Integer.parseInt(seat.substring(colon + 1)));
        });
        SortedMap<String, String> closed = new TreeMap<>();
        seats.keySet().forEach(seat -> {
            StringBuilder path = new StringBuilder();
            for (int end = seat.indexOf('/'); ; end = seat.indexOf('/', end + 1)) {
                String walked = end < 0 ? seat : seat.substring(0, end);
                int colon = walked.lastIndexOf(':');
                int before = positions.get(walked.substring(0, colon)).headSet(Integer.parseInt(walked.substring(colon + 1))).size();
                path.append(path.length() == 0 ? "" : "/").append(slot(walked)).append(':').append(before);
                if (end < 0) {
                    break;
                }
            }
            closed.put(seat, path.toString());
        });
        return closed;
    }

    /** The slot of a seat. */
    static String slot(String seat) {
        return seat.substring(seat.lastIndexOf('/') + 1, seat.lastIndexOf(':'));
    }

    Optional<String> at(String seat) {
        return Optional.ofNullable(seats.get(seat));
    }

    /** The same with another part in a seat, or none. */
    Arrangement with(String seat, Optional<String> part) {
        SortedMap<String, String> changed = new TreeMap<>(seats);
        part.ifPresentOrElse(put -> changed.put(seat, put), () -> changed.remove(seat));
        return new Arrangement(changed);
    }

    /** Equal for arrangements of the same build, whichever positions its parts are given. */
    String canonical() {
        return below("");
    }

    private String below(String prefix) {
        List<String> held = new ArrayList<>();
        for (String seat : seats.tailMap(prefix).keySet()) {
            if (!seat.startsWith(prefix)) {
                break;
            }
            if (seat.indexOf('/', prefix.length()) < 0) {
                held.add(slot(seat) + "=" + seats.get(seat) + below(seat + "/"));
            }
        }
        held.sort(Comparator.naturalOrder());
        return held.toString();
    }
}

package fettle.space.patch;

import fettle.catalog.BuildEntry;
import fettle.document.Origin;
import fettle.space.Occurrence;
import fettle.space.Placement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A build as a map from seats to parts. A seat is a path in which every slot names a position, such as {@code rail:1/lens:0}, so that a part keeps its
 * seat whatever becomes of its neighbours.
 */
record Arrangement(SortedMap<String, Seated> seats) {

    private static final Origin NOWHERE = Origin.startOf("");

    /** A part, and the first notch that it takes where that is said. */
    record Seated(String part, OptionalInt at) {
        static Seated anywhere(String part) {
            return new Seated(part, OptionalInt.empty());
        }
    }

    Arrangement {
        seats = Collections.unmodifiableSortedMap(new TreeMap<>(seats));
    }

    /** The placed parts of a build by seat. */
    static Arrangement of(Placement placement) {
        SortedMap<String, Seated> seats = new TreeMap<>();
        List<String> names = new ArrayList<>();
        for (Occurrence part : placement.parts()) {
            int host = placement.hostOf(part);
            String slot = placement.slotOf(part).slot().slot();
            String seat = (host == Placement.PLATFORM ? "" : names.get(host) + "/") + slot + ":" + part.entry().position();
            names.add(seat);
            seats.put(seat, new Seated(part.part(), part.at()));
        }
        return new Arrangement(seats);
    }

    /** The same as entries of a build. */
    List<BuildEntry> entries() {
        List<BuildEntry> entries = new ArrayList<>();
        seats.forEach((seat, seated) -> {
            int colon = seat.lastIndexOf(':');
            entries.add(new BuildEntry(
                    seat.substring(0, colon), Integer.parseInt(seat.substring(colon + 1)), seated.part, seated.at, NOWHERE, NOWHERE));
        });
        return entries;
    }

    /** The seat of an entry made by {@link #entries()}. */
    static String seat(BuildEntry entry) {
        return entry.path() + ":" + entry.position();
    }

    /** The seat that bears the slot of this one; empty where that is the platform. */
    static Optional<String> above(String seat) {
        int cut = seat.lastIndexOf('/');
        return cut < 0 ? Optional.empty() : Optional.of(seat.substring(0, cut));
    }

    /** The slot of a seat. */
    static String slot(String seat) {
        return seat.substring(seat.lastIndexOf('/') + 1, seat.lastIndexOf(':'));
    }

    Optional<Seated> at(String seat) {
        return Optional.ofNullable(seats.get(seat));
    }

    /** The same with another part in a seat, or none. */
    Arrangement with(String seat, Optional<Seated> seated) {
        SortedMap<String, Seated> changed = new TreeMap<>(seats);
        seated.ifPresentOrElse(part -> changed.put(seat, part), () -> changed.remove(seat));
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

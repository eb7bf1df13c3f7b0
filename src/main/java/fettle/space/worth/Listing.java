package fettle.space.worth;

import fettle.space.Circuit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Lists every choice out of nodes of the circuit that stand for few. */
final class Listing {

    private final Circuit circuit;
    private final int most;
    private final Meter meter;
    private final Map<Integer, List<Pick>> known = new HashMap<>();

    Listing(Circuit circuit, int most, Meter meter) {
        this.circuit = circuit;
        this.most = most;
        this.meter = meter;
    }

    /** All choices; breaks off as a decision that takes too many steps where there are too many. */
    List<Pick> of(int node) {
        List<Pick> picks = known.get(node);
        if (picks == null) {
            int first = circuit.first(node);
            int second = circuit.second(node);
            picks = switch (circuit.kind(node)) {
                case ONE -> List.of(Pick.NOTHING);
                case PART -> of(second).stream().<Pick>map(on -> new Pick.Headed(first, on)).toList();
                case SLOT -> of(second).stream().<Pick>map(held -> new Pick.InSlot(first, held)).toList();
                case BOTH -> pairs(of(first), of(second));
                case SEVERAL -> chosen(of(first), 0, second);
                case EITHER -> {
                    List<Pick> all = new ArrayList<>();
                    for (int i = 0; i < circuit.width(node); i++) {
                        all.addAll(of(circuit.alternative(node, i)));
                    }
                    yield all;
                }
            };
            if (picks.size() > most) {
                throw new Meter.Spent();
            }
            meter.spend(picks.size());
            known.put(node, picks);
        }
        return picks;
    }

    private List<Pick> pairs(List<Pick> some, List<Pick> others) {
        if ((long) some.size() * others.size() > most) {
            throw new Meter.Spent();
        }
        List<Pick> pairs = new ArrayList<>();
        some.forEach(one -> others.forEach(other -> pairs.add(Pick.both(one, other))));
        return pairs;
    }

    private List<Pick> chosen(List<Pick> from, int start, int copies) {
        if (copies == 0) {
            return List.of(Pick.NOTHING);
        }
        List<Pick> all = new ArrayList<>();
        for (int i = start; i < from.size(); i++) {
            for (Pick rest : chosen(from, i, copies - 1)) {
                all.add(Pick.both(from.get(i), rest));
                if (all.size() > most) {
                    throw new Meter.Spent();
                }
            }
        }
        return all;
    }
}

package fettle.view;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Flattens reasons for readers that want a list: what a result follows from comes before it, and each is told once. */
final class Reasoning {

    private Reasoning() {}

    static List<Told> of(List<Told> reasons) {
        Set<Told> told = new LinkedHashSet<>();
        reasons.forEach(reason -> tell(reason, told));
        return new ArrayList<>(told);
    }

    private static void tell(Told reason, Set<Told> told) {
        if (!told.contains(reason)) {
            reason.premises().forEach(premise -> tell(premise, told));
            told.add(reason);
        }
    }
}

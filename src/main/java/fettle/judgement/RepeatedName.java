package fettle.judgement;

import fettle.catalog.Reference;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A name that stands in one list again. To find it by comparing all mentions with each other would take the square of their number. What a constraint asks for is judged by
 * another rule, since it was mostly meant otherwise.
 *
 * @param first where it stands first
 * @param again where it stands again
 */
public record RepeatedName(Reference first, Reference again) {

    static List<RepeatedName> of(Collection<Reference> references) {
        Map<List<Object>, Reference> first = new HashMap<>();
        List<RepeatedName> repeated = new ArrayList<>();
        for (Reference mention : references) {
            String pointer = mention.origin().pointer();
            int last = pointer.lastIndexOf('/');
            if (last > 0 && pointer.substring(last + 1).chars().allMatch(Character::isDigit) && !pointer.startsWith("/constraints/")) {
                Reference before = first.putIfAbsent(
                        List.of(mention.origin().file(), pointer.substring(0, last), mention.space(), mention.id(), mention.selecting()), mention);
                if (before != null) {
                    repeated.add(new RepeatedName(before, mention));
                }
            }
        }
        return repeated;
    }
}

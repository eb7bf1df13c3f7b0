package fettle.judgement;

import fettle.document.Origin;
import fettle.engine.Severity;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Something worth saying about a catalog, a build or a patch, with the facts that caused it. Text is a view on it: the message and the
 * remedies are the rule's templates filled in from {@code data}.
 *
 * @param subject what it is about, such as {@code part:x}
 * @param where the places to look at, the one to mend first
 * @param because the facts that caused it, in the order of the reasoning
 * @param data values by name: texts, exact decimals, whole numbers, booleans, and lists or maps of these
 * @param waived the waiver's reason, where the finding is waived
 */
public record Finding(
        String rule,
        Severity severity,
        String subject,
        List<Origin> where,
        List<Reason> because,
        SortedMap<String, Object> data,
        Optional<String> waived) {

    public Finding {
        where = List.copyOf(where);
        because = List.copyOf(because);
        data = Collections.unmodifiableSortedMap(new TreeMap<>(data));
    }

    /** The same finding, waived. */
    public Finding waivedBecause(String reason) {
        return new Finding(rule, severity, subject, where, because, data, Optional.of(reason));
    }
}

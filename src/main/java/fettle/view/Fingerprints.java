package fettle.view;

import fettle.judgement.Finding;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Names findings by what they say, so that a finding keeps its name when the lines around it move. One instance names those of one run. */
final class Fingerprints {

    private final Wording wording;
    private final Map<String, Integer> seen = new HashMap<>();

    Fingerprints(Wording wording) {
        this.wording = wording;
    }

    String of(Finding finding) {
        List<String> said = new ArrayList<>(List.of(finding.rule(), finding.subject(), wording.message(finding)));
        Reasoning.of(wording.reasons(finding)).forEach(reason -> said.add(reason.fact()));
        String print = Digests.of(String.join("\n", said).replaceAll("\\bline \\d+", "line"));
        int before = seen.merge(print, 1, Integer::sum);
        return before == 1 ? print : print + ":" + before;
    }
}

package fettle.judgement;

import fettle.space.BuildResult;
import java.util.List;

/** One build with its result and its findings. */
public record BuildReview(String file, BuildResult result, List<Finding> findings) {

    public BuildReview {
        findings = List.copyOf(findings);
    }
}

package fettle.judgement;

import fettle.catalog.Build;
import fettle.catalog.SectionNoun;
import java.util.Collection;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What in a catalog bears on some builds: what holds for every build, such as attributes, limits and currencies, and of parts and the like those that the builds name.
 *
 * @param named what they name, as findings name it
 */
record Bearing(Scope named) {

    /** The sorts of things that bear on no build but those that name them. */
    private static final Set<String> BY_NAME = Set.of("part", "platform", "slot", "offer", "access", "outfit", "lens");

    /** What is written for maintainers alone. */
    private static final String WAIVER = "waiver";

    static Bearing on(Collection<Build> builds) {
        return new Bearing(Scope.of(builds.stream().flatMap(build -> BuildMention.of(build).stream())
                .map(mention -> SectionNoun.of(mention.space()) + ":" + mention.id()).collect(Collectors.toSet())));
    }

    /** Whether the subject of a finding on the catalog does. */
    boolean has(String subject) {
        String sort = subject.substring(0, Math.max(0, subject.indexOf(':')));
        return BY_NAME.contains(sort) ? named.takes(subject) : !sort.equals(WAIVER);
    }
}

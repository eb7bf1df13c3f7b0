package fettle.space;

import fettle.catalog.Build;
import fettle.catalog.Part;
import fettle.document.Origin;
import fettle.relation.Relations;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * What is wrong with the build that a platform comes with.
 *
 * @param broken the relations that it breaks
 * @param lost the parts of it that could not be placed, other than for being unknown
 * @param places where these stand, each once
 */
public record FactoryCheck(Part platform, List<Violation> broken, List<Unresolved> lost, List<Origin> places) {

    public FactoryCheck {
        broken = List.copyOf(broken);
        lost = List.copyOf(lost);
        places = List.copyOf(places);
    }

    /** Whether there is nothing wrong with it. */
    public boolean sound() {
        return broken.isEmpty() && lost.isEmpty();
    }

    /** The rules that it breaks, in order. */
    public List<String> rules() {
        Set<String> rules = new TreeSet<>();
        broken.forEach(violation -> rules.add(violation.rule()));
        if (!lost.isEmpty()) {
            rules.add("no-such-slot");
        }
        return List.copyOf(rules);
    }

    /** The slots nearest to those that are not there, or where else the parts could go; empty where there are none. */
    public Optional<List<String>> near() {
        Set<String> near = new TreeSet<>();
        lost.forEach(each -> {
            if (each instanceof Unresolved.NoSuchSlot noSlot) {
                noSlot.near().or(noSlot::elsewhere).ifPresent(near::addAll);
            }
        });
        return near.isEmpty() ? Optional.empty() : Optional.of(List.copyOf(near));
    }

    /** The checks of all platforms that say what they come with. */
    static List<FactoryCheck> of(Relations relations) {
        BuildCheck check = new BuildCheck(relations);
        return relations.catalog().platforms().values().stream()
                .filter(platform -> !platform.factory().isEmpty())
                .map(platform -> of(platform, check.check(comesWith(platform))))
                .toList();
    }

    private static FactoryCheck of(Part platform, BuildResult result) {
        Placement placement = result.placement().orElseThrow();
        List<Unresolved> unplaced = placement.unresolved().stream().filter(each -> !(each instanceof Unresolved.NoSuchPart)).toList();
        List<Unresolved> lost = unplaced.stream().filter(each -> each.entry().named()).toList();
        // What stands nowhere and can't be read may be what fills any slot.
        boolean obscure = lost.size() < unplaced.size();
        Set<Origin> places = new LinkedHashSet<>();
        List<Violation> broken = result.violations().stream()
                .filter(violation -> !placement.onlyDoubtful(violation) && !(obscure && violation.parts().isEmpty())).toList();
        broken.forEach(violation -> violation.parts().stream()
                .filter(part -> part != Placement.PLATFORM)
                .forEach(part -> places.add(placement.parts().get(part).entry().origin())));
        lost.forEach(each -> places.add(each.entry().pathOrigin()));
        return new FactoryCheck(platform, broken, lost, List.copyOf(places));
    }

    private static Build comesWith(Part platform) {
        return new Build(
                platform.id(), platform.label(), new Build.Located(platform.id(), platform.origin()), Optional.empty(), platform.factory(), true,
                Optional.empty(), Optional.empty(), List.of(), Optional.empty(), Optional.empty(), platform.origin());
    }
}

package fettle.oracle;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.Function;

/** What "Dominated" says of a part over all slots in which it is placeable. */
public final class Worth {
  private Worth() {}

  /** One (platform, H, S). */
  public record Site(Space space, String host, String slot) {}

  /** Every (H, S) of the platform and its reachable parts. */
  public static List<Site> sites(Space space) {
    List<Site> sites = new ArrayList<>();
    SortedSet<String> hosts = new Survey(space).reachable();
    hosts.add(space.platform());
    for (String host : hosts) {
      space.entries().host(host).slots().forEach(slot -> sites.add(new Site(space, host, slot.id())));
    }
    return sites;
  }

  /** "It is never worth using when that holds in every (platform, H, S) in which it is placeable", of which there is one. */
  public static SortedSet<String> neverWorthUsing(Collection<Space> platforms) {
    return neverWorthUsing(platforms, site -> Dominance.ignoringCost(site.space, site.host, site.slot));
  }

  /** The same, with cost. */
  public static SortedSet<String> neverWorthUsingWithCost(Collection<Space> platforms, Optional<String> access) {
    return neverWorthUsing(platforms, site -> Dominance.withCost(site.space, site.host, site.slot, access));
  }

  private static SortedSet<String> neverWorthUsing(Collection<Space> platforms, Function<Site, Dominance> mode) {
    SortedSet<String> placeable = new TreeSet<>();
    SortedSet<String> worthwhile = new TreeSet<>();
    for (Space space : platforms) {
      for (Site site : sites(space)) {
        Set<String> heads = Dominance.ignoringCost(site.space, site.host, site.slot).heads();
        placeable.addAll(heads);
        Set<String> dominated = mode.apply(site).dominated().keySet();
        heads.stream().filter(part -> !dominated.contains(part)).forEach(worthwhile::add);
      }
    }
    placeable.removeAll(worthwhile);
    return placeable;
  }
}

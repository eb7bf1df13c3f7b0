package fettle.oracle;

import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/** What may be put into a slot: one assembly, or the empty choice, "an assembly with no parts". */
public record Choice(Optional<Assembly> assembly) {
  public static final Choice EMPTY = new Choice(Optional.empty());

  public static Choice of(Assembly assembly) {
    return new Choice(Optional.of(assembly));
  }

  /** The part that heads it; the empty choice is headed by none. */
  public Optional<String> head() {
    return assembly.map(Assembly::part);
  }

  public List<String> parts() {
    return assembly.map(Assembly::parts).orElse(List.of());
  }

  /** The role kinds of its parts. */
  SortedSet<String> roles(Entries entries) {
    SortedSet<String> roles = new TreeSet<>();
    for (String part : parts()) {
      String kind = entries.part(part).orElseThrow().kind();
      if (entries.isRole(kind)) {
        roles.add(kind);
      }
    }
    return roles;
  }

  @Override
  public String toString() {
    return assembly.map(Assembly::text).orElse("(empty)");
  }
}

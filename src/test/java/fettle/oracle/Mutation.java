package fettle.oracle;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.UnaryOperator;

/** Changes one thing in a build, which may or may not leave it valid. */
final class Mutation {
  private final Entries entries;
  private final Random random;

  Mutation(Entries entries, Random random) {
    this.entries = entries;
    this.random = random;
  }

  /** One change somewhere in the build: a part exchanged, removed, doubled, added or given another place. */
  Assembly of(Assembly build) {
    int placed = build.parts().size() - 1;
    if (placed == 0 || random.nextInt(4) == 0) {
      return changed(build, random.nextInt(placed + 1), this::withOneMore);
    }
    int which = 1 + random.nextInt(placed);
    return switch (random.nextInt(4)) {
      case 0 -> changed(build, which, part -> new Assembly(anyPart(), part.at(), part.slots()));
      case 1 -> heldAgain(build, which, false);
      case 2 -> heldAgain(build, which, true);
      default -> changed(build, which, part -> new Assembly(part.part(), Optional.of(random.nextInt(5)), part.slots()));
    };
  }

  private String anyPart() {
    return entries.partIds().get(random.nextInt(entries.partIds().size()));
  }

  /** Adds any part to any of the host's slots. */
  private Assembly withOneMore(Assembly host) {
    List<SlotEntry> slots = entries.host(host.part()).slots();
    if (slots.isEmpty()) {
      return host;
    }
    String slot = slots.get(random.nextInt(slots.size())).id();
    List<Assembly> more = new ArrayList<>(host.held(slot));
    more.add(Assembly.bare(anyPart()));
    return host.with(slot, more);
  }

  /** Changes the assembly of that number, the build itself being 0 and the others numbered as {@link Assembly#parts} lists them. */
  private static Assembly changed(Assembly here, int which, UnaryOperator<Assembly> change) {
    if (which == 0) {
      return change.apply(here);
    }
    return within(here, which, (held, i, inside) -> held.set(i, changed(held.get(i), inside, change)));
  }

  /** Takes the assembly of that number out of its slot, or puts it in twice. */
  private static Assembly heldAgain(Assembly here, int which, boolean twice) {
    return within(
        here,
        which,
        (held, i, inside) -> {
          if (inside > 0) {
            held.set(i, heldAgain(held.get(i), inside, twice));
          } else if (twice) {
            held.add(i, held.get(i));
          } else {
            held.remove(i);
          }
        });
  }

  private interface Edit {
    void apply(List<Assembly> held, int position, int inside);
  }

  /** Edits the list in which the assembly of that number sits, or below one of whose members it sits. */
  private static Assembly within(Assembly here, int which, Edit edit) {
    int next = 1;
    for (String slot : here.slots().keySet()) {
      List<Assembly> held = new ArrayList<>(here.held(slot));
      for (int i = 0; i < held.size(); i++) {
        int size = held.get(i).parts().size();
        if (which < next + size) {
          edit.apply(held, i, which - next);
          return here.with(slot, held);
        }
        next += size;
      }
    }
    throw new IllegalArgumentException("no assembly " + which + " in " + here);
  }
}

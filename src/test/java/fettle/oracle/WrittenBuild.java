package fettle.oracle;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;
import tools.jackson.databind.JsonNode;

/**
 * A build as a build file has it (format.md, Build file), resolved against a catalog.
 *
 * @param root what could be resolved; empty where the platform is unknown
 * @param unresolved what names nothing
 */
public record WrittenBuild(Optional<Assembly> root, List<Violation> unresolved) {

  /** Reads one build object: its {@code platform} and {@code parts}. */
  public static WrittenBuild read(Entries entries, JsonNode build) {
    return read(entries, Fields.text(build, "platform"), build.path("parts"));
  }

  /** Reads a {@code parts} map, as a build or a platform's {@code factory} has it. */
  public static WrittenBuild read(Entries entries, String platform, JsonNode parts) {
    if (entries.platform(platform).isEmpty()) {
      return new WrittenBuild(Optional.empty(), List.of(unresolved("", "no platform " + platform)));
    }
    Seat root = new Seat(entries.platform(platform), OptionalInt.empty(), new TreeMap<>());
    List<Violation> problems = new ArrayList<>();
    // Hosts before what sits on them, whatever the order of the file.
    parts.properties().stream()
        .sorted(Comparator.comparingInt(member -> member.getKey().split("/", -1).length))
        .forEach(member -> seat(entries, root, member, problems));
    return new WrittenBuild(Optional.of(root.assembly()), List.copyOf(problems));
  }

  private static void seat(
      Entries entries, Seat root, Map.Entry<String, JsonNode> member, List<Violation> problems) {
    String path = member.getKey();
    int last = path.lastIndexOf('/');
    Optional<Seat> host = last < 0 ? Optional.of(root) : root.walk(List.of(path.substring(0, last).split("/", -1)));
    String slot = path.substring(last + 1);
    if (host.flatMap(Seat::entry).flatMap(entry -> entry.slot(slot)).isEmpty()) {
      problems.add(unresolved(path, "no such path"));
      return;
    }
    List<JsonNode> values =
        member.getValue().isArray() ? member.getValue().valueStream().toList() : List.of(member.getValue());
    for (JsonNode value : values) {
      String id = value.isObject() ? Fields.text(value, "part") : value.asString();
      if (entries.part(id).isEmpty()) {
        problems.add(unresolved(path, "no part " + id));
      }
      // An unknown part keeps its place, so that the positions after it stay what they are.
      host.get().add(slot, new Seat(entries.part(id), value.path("at").intValueOpt(), new TreeMap<>()));
    }
  }

  private static Violation unresolved(String path, String what) {
    return new Violation(Violation.STRUCTURE, List.of(path), what);
  }

  /** A place in a build that is being read; without an entry where the part is unknown. */
  private record Seat(
      Optional<PartEntry> entry, OptionalInt at, SortedMap<String, List<Seat>> slots) {
    void add(String slot, Seat seat) {
      slots.computeIfAbsent(slot, any -> new ArrayList<>()).add(seat);
    }

    Optional<Seat> walk(List<String> segments) {
      Optional<Seat> here = Optional.of(this);
      for (String segment : segments) {
        here = here.flatMap(seat -> seat.step(segment));
      }
      return here;
    }

    /**
     * A segment names the position where the slot holds several parts. format.md says it does where it may hold several; a
     * position that is told or left out where one part sits leaves no doubt which is meant.
     */
    private Optional<Seat> step(String segment) {
      int colon = segment.indexOf(':');
      String slot = colon < 0 ? segment : segment.substring(0, colon);
      List<Seat> held = slots.getOrDefault(slot, List.of());
      String position = colon < 0 ? "0" : segment.substring(colon + 1);
      if (colon < 0 && held.size() > 1 || !position.matches("0|[1-9][0-9]{0,8}")) {
        return Optional.empty();
      }
      return held.stream().skip(Integer.parseInt(position)).findFirst();
    }

    Assembly assembly() {
      SortedMap<String, List<Assembly>> filled = new TreeMap<>();
      slots.forEach(
          (slot, seats) ->
              filled.put(slot, seats.stream().filter(seat -> seat.entry.isPresent()).map(Seat::assembly).toList()));
      return new Assembly(entry.orElseThrow().id(), at.isPresent() ? Optional.of(at.getAsInt()) : Optional.empty(), filled);
    }
  }
}

package fettle.view;

import fettle.catalog.Catalog;
import fettle.catalog.Entry;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;

/** The sorts of things that ids in a catalog name, each by its word and its section. */
public enum IdSort {
    PART("parts"),
    PLATFORM("platforms"),
    SLOT("slots"),
    KIND("kinds"),
    TAG("tags"),
    MOUNT("mounts"),
    ZONE("zones"),
    TRAIT("traits"),
    ATTRIBUTE("attributes"),
    CONSTRAINT("constraints"),
    CURRENCY("currencies"),
    VENDOR("vendors"),
    GOOD("goods"),
    ACCESS("access"),
    OUTFIT("outfits"),
    LIMIT("limits"),
    LENS("lenses");

    private final String section;

    IdSort(String section) {
        this.section = section;
    }

    /** The sort as people write it before an id: {@code part:x}. */
    String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    String section() {
        return section;
    }

    /** A thing that an id names. */
    public record Named(IdSort sort, String id) {

        /** As findings name it: {@code part:x}. */
        @Override
        public String toString() {
            return sort.word() + ":" + id;
        }
    }

    /** Everything that a catalog knows under a name: an id, a slot as {@code host/slot}, or either with its sort before it. */
    public static List<Named> named(Catalog catalog, String name) {
        List<Named> found = new ArrayList<>();
        for (IdSort sort : values()) {
            String prefix = sort.word() + ":";
            String id = name.startsWith(prefix) ? name.substring(prefix.length()) : name;
            if (sort.ids(catalog).contains(id)) {
                found.add(new Named(sort, id));
            }
        }
        return found;
    }

    /** All names that could be asked for. */
    public static Set<String> known(Catalog catalog) {
        Set<String> all = new TreeSet<>();
        for (IdSort sort : values()) {
            all.addAll(sort.ids(catalog));
        }
        return all;
    }

    private Set<String> ids(Catalog catalog) {
        Set<String> ids = new TreeSet<>();
        if (this == TAG) {
            catalog.parts().values().forEach(part -> part.names().forEach(name -> {
                if (name.name().startsWith("tag:")) {
                    ids.add(name.name().substring("tag:".length()));
                }
            }));
            hosts(catalog).forEach(host -> host.slots().forEach(slot -> slot.tags().forEach(tag -> ids.add(tag.tag()))));
        } else if (this == SLOT) {
            hosts(catalog).forEach(host -> host.slots().forEach(slot -> ids.add(slot.id().toString())));
        } else {
            catalog.entries().stream().filter(entry -> entry.section().equals(section)).map(Entry::id).forEach(ids::add);
        }
        return ids;
    }

    private static List<fettle.catalog.Part> hosts(Catalog catalog) {
        List<fettle.catalog.Part> hosts = new ArrayList<>(catalog.platforms().values());
        hosts.addAll(catalog.parts().values());
        return hosts;
    }
}

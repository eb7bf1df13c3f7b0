package fettle.space;

import fettle.catalog.Part;
import fettle.catalog.Stat;
import fettle.relation.Relations;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/** A stat of a part that can come to stand on a platform, one for each platform and attribute: that of the first such part. */
public record ReachedStat(String platform, Stat stat) {

    /** The attribute that it is of. */
    public String attribute() {
        return stat.attribute();
    }

    static List<ReachedStat> of(Relations relations, List<Reach> reaches) {
        List<ReachedStat> stats = new ArrayList<>();
        for (Reach reach : reaches) {
            SortedMap<String, Stat> first = new TreeMap<>();
            for (String id : reach.partNames()) {
                Part part = relations.catalog().parts().get(id);
                part.stats().values().forEach(stat -> first.putIfAbsent(stat.attribute(), stat));
                part.loaded().values().forEach(stat -> first.putIfAbsent(stat.attribute(), stat));
            }
            first.values().forEach(stat -> stats.add(new ReachedStat(reach.platformName(), stat)));
        }
        return stats;
    }
}

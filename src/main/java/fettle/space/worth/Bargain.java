package fettle.space.worth;

import java.math.BigDecimal;

/**
 * A choice with what it costs and what it brings.
 *
 * @param parts how many parts it has
 */
record Bargain(Pick pick, int parts, BigDecimal cost, BigDecimal benefit) implements Hull.Point {

    static final Bargain NOTHING = new Bargain(Pick.NOTHING, 0, BigDecimal.ZERO, BigDecimal.ZERO);

    Bargain with(Bargain other) {
        return new Bargain(Pick.both(pick, other.pick), parts + other.parts, cost.add(other.cost), benefit.add(other.benefit));
    }

    Bargain in(int slot) {
        return new Bargain(new Pick.InSlot(slot, pick), parts, cost, benefit);
    }

    Bargain on(Bargain part) {
        return new Bargain(new Pick.Headed(((Pick.Headed) part.pick).part(), pick), parts + 1, cost.add(part.cost), benefit.add(part.benefit));
    }
}

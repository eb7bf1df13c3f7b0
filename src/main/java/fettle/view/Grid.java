package fettle.view;

import java.util.ArrayList;
import java.util.List;

/** Sets short rows side by side in as many equal columns as a width holds, read downward. */
final class Grid {

    private static final int GAP = 4;

    /** A name, a number that is aligned at its right, and what follows it. */
    record Cell(String name, String number, String unit) {
        Cell {
            name = SafeText.of(name);
            number = SafeText.of(number);
            unit = SafeText.of(unit);
        }
    }

    private Grid() {}

    /** The rows as lines. */
    static List<String> lines(List<Cell> cells, int width) {
        int name = widest(cells.stream().map(Cell::name).toList());
        int number = widest(cells.stream().map(Cell::number).toList());
        int unit = widest(cells.stream().map(Cell::unit).toList());
        int cell = name + 2 + number + (unit == 0 ? 0 : 1 + unit);
        int across = Math.max(1, (width + GAP) / (cell + GAP));
        int down = (cells.size() + across - 1) / across;
        List<String> lines = new ArrayList<>();
        for (int row = 0; row < down; row++) {
            StringBuilder line = new StringBuilder();
            for (int at = row; at < cells.size(); at += down) {
                Cell shown = cells.get(at);
                line.append(left(shown.name, name)).append("  ").append(right(shown.number, number))
                        .append(unit == 0 ? "" : " " + left(shown.unit, unit)).append(" ".repeat(GAP));
            }
            lines.add(line.toString().stripTrailing());
        }
        return lines;
    }

    static int widest(List<String> texts) {
        return texts.stream().mapToInt(Columns::of).max().orElse(0);
    }

    static String left(String text, int columns) {
        return text + " ".repeat(Math.max(0, columns - Columns.of(text)));
    }

    static String right(String text, int columns) {
        return " ".repeat(Math.max(0, columns - Columns.of(text))) + text;
    }
}

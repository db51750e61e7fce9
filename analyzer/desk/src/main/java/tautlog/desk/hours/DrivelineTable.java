package tautlog.desk.hours;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import tautlog.desk.page.Block;
import tautlog.usage.DrivelineUse;
import tautlog.usage.TorqueSpeedCell;

/** Time of the turning shaft by torque and speed, as shares of its rating; the rope on the drum's first layer, and on its last. */
final class DrivelineTable {
    private static final double NANOS_PER_HOUR = 3_600e9;

    private DrivelineTable() {}

    /** Empty when there is no such time. */
    static List<Block> of(DrivelineUse use) {
        Map<Integer, long[]> nanos = new TreeMap<>();
        add(nanos, use.firstLayer(), 0);
        add(nanos, use.lastLayer(), 1);
        if (nanos.isEmpty()) {
            return List.of();
        }
        List<List<String>> rows = new ArrayList<>();
        nanos.forEach((key, layers) -> rows.add(List.of(
                torque(key / (TorqueSpeedCell.MOST_SPEED + 1)),
                speed(key % (TorqueSpeedCell.MOST_SPEED + 1)),
                hours(layers[0]),
                hours(layers[1]))));
        return List.of(new Block.Table(
                "Hours of the shaft by torque and speed, % of its rating",
                List.of(
                        Block.Column.left("Torque"),
                        Block.Column.left("Speed"),
                        Block.Column.right("First layer"),
                        Block.Column.right("Last layer")),
                rows));
    }

    private static void add(Map<Integer, long[]> nanos, List<TorqueSpeedCell> cells, int layer) {
        for (TorqueSpeedCell cell : cells) {
            int key = cell.torqueTenths() * (TorqueSpeedCell.MOST_SPEED + 1) + cell.speedTenths();
            nanos.computeIfAbsent(key, of -> new long[2])[layer] += cell.nanos();
        }
    }

    private static String torque(int tenths) {
        if (tenths == 0) {
            return "line slack";
        }
        return tenths == TorqueSpeedCell.MOST_TORQUE
                ? "above " + (tenths - 1) * 10 + " %"
                : "above " + (tenths - 1) * 10 + " to " + tenths * 10 + " %";
    }

    private static String speed(int tenths) {
        return tenths == TorqueSpeedCell.MOST_SPEED
                ? "from " + tenths * 10 + " % on"
                : "from " + tenths * 10 + " to below " + (tenths + 1) * 10 + " %";
    }

    private static String hours(long nanos) {
        return nanos == 0 ? "" : String.format(Locale.ROOT, "%.3f", nanos / NANOS_PER_HOUR);
    }
}

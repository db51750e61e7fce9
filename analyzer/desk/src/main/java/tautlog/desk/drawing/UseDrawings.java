package tautlog.desk.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import tautlog.desk.page.Block;
import tautlog.desk.page.Screen;
import tautlog.desk.plot.BarPlot;
import tautlog.desk.plot.CellPlot;
import tautlog.rig.Driveline;
import tautlog.usage.DrivelineUse;
import tautlog.usage.TorqueSpeedCell;

/** Drawings of what machines were used for: torque over speed, time in bands of the limit. */
public final class UseDrawings {
    private static final double NANOS_PER_SECOND = 1e9;
    private static final List<String> BANDS = List.of("to 25 %", "to 50 %", "to 75 %", "to 100 %", "above 100 %");

    private UseDrawings() {}

    /** On which layer of the drum the rope is taken to run. */
    public enum Layer {
        FIRST("first"),
        LAST("last");

        private final String word;

        Layer(String word) {
            this.word = word;
        }
    }

    /**
     * The time that the shaft spent at each torque and speed, clutch engaged or unknown; empty when there is none.
     *
     * @param id different for every drawing of a page, letters and digits
     * @param driveline of the latest rig: what 100 % is; empty when recordings of several ratings are added up
     */
    public static Optional<Block.Figure> torqueOverSpeed(
            String id, DrivelineUse use, Layer layer, Optional<Driveline> driveline) {
        List<TorqueSpeedCell> cells = layer == Layer.FIRST ? use.firstLayer() : use.lastLayer();
        long most = cells.stream().mapToLong(TorqueSpeedCell::nanos).max().orElse(0);
        if (most == 0) {
            return Optional.empty();
        }
        List<CellPlot.Cell> drawn = cells.stream()
                .map(cell -> new CellPlot.Cell(
                        cell.speedTenths(), cell.torqueTenths(), (double) cell.nanos() / most, words(cell)))
                .toList();
        String title = "Shaft: torque over speed, rope on the drum's " + layer.word + " layer";
        String svg = CellPlot.draw(
                new CellPlot.Caption(id, title + ". " + described(cells)), speed(driveline), torque(driveline), drawn);
        return Optional.of(new Block.Figure(title, svg));
    }

    /** The least row is a slack line; so 100 % is at the eleventh edge. */
    private static CellPlot.Axis torque(Optional<Driveline> driveline) {
        List<String> labels = new ArrayList<>(List.of("", "0"));
        IntStream.rangeClosed(1, TorqueSpeedCell.MOST_TORQUE - 1).forEach(k -> labels.add(k % 2 == 0 ? k + "0" : ""));
        labels.set(0, "slack");
        String rated = driveline
                .map(line -> String.format(Locale.ROOT, ", 100 %% = %.0f N m", line.ratedTorqueNewtonMetres()))
                .orElse("");
        return new CellPlot.Axis(
                "torque, % of rated" + rated,
                TorqueSpeedCell.MOST_TORQUE + 1,
                labels,
                1,
                OptionalDouble.of(11),
                "rated torque");
    }

    private static CellPlot.Axis speed(Optional<Driveline> driveline) {
        List<String> labels = IntStream.rangeClosed(0, TorqueSpeedCell.MOST_SPEED / 2)
                .mapToObj(k -> String.valueOf(20 * k))
                .toList();
        String rated = driveline
                .map(line -> String.format(Locale.ROOT, ", 100 %% = %.0f rpm", line.ratedRpm()))
                .orElse("");
        return new CellPlot.Axis(
                "speed, % of rated" + rated,
                TorqueSpeedCell.MOST_SPEED + 1,
                labels,
                2,
                OptionalDouble.of(10),
                "rated speed");
    }

    private static String words(TorqueSpeedCell cell) {
        return "torque " + torqueWords(cell.torqueTenths()) + ", speed " + speedWords(cell.speedTenths()) + ": "
                + Screen.length(cell.nanos() / NANOS_PER_SECOND);
    }

    private static String torqueWords(int tenths) {
        return tenths == 0
                ? "none (line slack)"
                : tenths == TorqueSpeedCell.MOST_TORQUE
                        ? "above 200 % of rated"
                        : (tenths - 1) * 10 + " to " + tenths * 10 + " % of rated";
    }

    private static String speedWords(int tenths) {
        return tenths == TorqueSpeedCell.MOST_SPEED
                ? "from 160 % of rated on"
                : tenths * 10 + " to " + (tenths + 1) * 10 + " % of rated";
    }

    private static String described(List<TorqueSpeedCell> cells) {
        long all = cells.stream().mapToLong(TorqueSpeedCell::nanos).sum();
        long above = cells.stream()
                .filter(cell -> cell.torqueTenths() > 10)
                .mapToLong(TorqueSpeedCell::nanos)
                .sum();
        TorqueSpeedCell longest = cells.stream()
                .reduce((one, other) -> one.nanos() >= other.nanos() ? one : other)
                .orElseThrow();
        return "In all " + Screen.length(all / NANOS_PER_SECOND) + ", of which "
                + Screen.length(above / NANOS_PER_SECOND) + " above the rated torque. Most time at " + words(longest)
                + ".";
    }

    /**
     * Time in pulls by share of the limit.
     *
     * @param bandHours to 0.25, 0.5, 0.75, 1 of the limit, and above
     */
    public static Block.Figure loadBands(String id, List<Double> bandHours) {
        List<BarPlot.Bar> bars = new ArrayList<>();
        for (int i = 0; i < BANDS.size(); i++) {
            bars.add(new BarPlot.Bar(
                    BANDS.get(i), bandHours.get(i), Screen.length(bandHours.get(i) * 3_600), i == BANDS.size() - 1));
        }
        String title = "Time in pulls by share of the limit";
        String words = bars.stream()
                .map(bar -> bar.name() + ": " + bar.words())
                .reduce((one, other) -> one + "; " + other)
                .orElseThrow();
        return new Block.Figure(title, BarPlot.draw(id, title + ". " + words + ".", "% of limit; hours", bars));
    }
}

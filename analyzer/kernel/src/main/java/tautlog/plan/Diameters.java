package tautlog.plan;

import java.util.List;
import tautlog.quantity.Length;

/** Where a log's thickness was measured, and the formula for its volume that goes with it. */
public sealed interface Diameters {
    /** In cubic metres, of a log {@code metres} long. */
    double cubicMetres(double metres);

    /** The formula's name. */
    String formula();

    /** As written, from the large end to the small one. */
    List<Length> all();

    /** Both ends: Smalian, L (A1 + A2) / 2. Too much for a log like a cone. */
    record Ends(Length large, Length small) implements Diameters {
        @Override
        public double cubicMetres(double metres) {
            return metres * (squareMetres(large) + squareMetres(small)) / 2;
        }

        @Override
        public String formula() {
            return "Smalian";
        }

        @Override
        public List<Length> all() {
            return List.of(large, small);
        }
    }

    /** Both ends and the middle: Newton, L (A1 + 4 Am + A2) / 6. Exact for a cone. */
    record EndsAndMiddle(Length large, Length middle, Length small) implements Diameters {
        @Override
        public double cubicMetres(double metres) {
            return metres * (squareMetres(large) + 4 * squareMetres(middle) + squareMetres(small)) / 6;
        }

        @Override
        public String formula() {
            return "Newton";
        }

        @Override
        public List<Length> all() {
            return List.of(large, middle, small);
        }
    }

    /** The middle only: Huber, L Am. Too little for a log like a cone. */
    record Middle(Length middle) implements Diameters {
        @Override
        public double cubicMetres(double metres) {
            return metres * squareMetres(middle);
        }

        @Override
        public String formula() {
            return "Huber";
        }

        @Override
        public List<Length> all() {
            return List.of(middle);
        }
    }

    private static double squareMetres(Length diameter) {
        return Math.PI * diameter.metres() * diameter.metres() / 4;
    }
}

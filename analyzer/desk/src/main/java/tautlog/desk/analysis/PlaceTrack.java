package tautlog.desk.analysis;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import tautlog.desk.report.Place;
import tautlog.sample.Evidence;
import tautlog.sample.ForwardedEvidence;
import tautlog.sample.Position;

/** Remembers where an outing's winch was. What was told more than 10 s ago says nothing of now. */
final class PlaceTrack {
    private static final long LONGEST_SECONDS = 10;

    private final TreeMap<Long, Position> positions = new TreeMap<>();
    private final long tickHz;

    PlaceTrack(long tickHz) {
        this.tickHz = tickHz;
    }

    /** Passes everything on to {@code next} and remembers the positions. */
    Evidence noting(Evidence next) {
        return new ForwardedEvidence(next) {
            @Override
            public void position(Position position) {
                positions.put(position.tick(), position);
                super.position(position);
            }
        };
    }

    Optional<Place> at(long tick) {
        Map.Entry<Long, Position> latest = positions.floorEntry(tick);
        if (latest == null || tick - latest.getKey() > LONGEST_SECONDS * tickHz) {
            return Optional.empty();
        }
        Position position = latest.getValue();
        return Optional.of(new Place(
                position.latitudeE7() / 1e7, position.longitudeE7() / 1e7, (double) (tick - position.tick()) / tickHz));
    }
}

package tautlog.service;

import java.util.Optional;

/**
 * Gear of the rig, or one of several identical pieces of it.
 *
 * @param gear its id in the rig
 * @param piece the name that the crew gave one of the identical pieces; empty: all of them
 */
public record GearPiece(String gear, Optional<String> piece) {
    /** {@code choker}, {@code choker (red)}. */
    @Override
    public String toString() {
        return gear + piece.map(name -> " (" + name + ")").orElse("");
    }
}

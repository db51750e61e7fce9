package tautlog.plan;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import tautlog.config.NearestKey;
import tautlog.quantity.Density;

/** The species whose green density is shipped: {@code green-density.csv} beside this class. */
public final class SpeciesTable {
    private static final SpeciesTable SHIPPED = read();

    private final List<Species> all;

    private SpeciesTable(List<Species> all) {
        this.all = all;
    }

    /** The table in this program's jar. */
    public static SpeciesTable shipped() {
        return SHIPPED;
    }

    private static SpeciesTable read() {
        try (InputStream in = SpeciesTable.class.getResourceAsStream("green-density.csv")) {
            if (in == null) {
                throw new IllegalStateException("the program's own table green-density.csv is missing from its jar");
            }
            return new SpeciesTable(new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .map(line -> species(line.split(",", -1)))
                    .toList());
        } catch (IOException unreadable) {
            throw new UncheckedIOException("the program's own table green-density.csv", unreadable);
        }
    }

    private static Species species(String[] row) {
        return new Species(row[0], row[1], Density.parse(row[2] + " lb/ft3"), Density.parse(row[3] + " lb/ft3"));
    }

    /** All, in the order of the table. */
    public List<Species> all() {
        return all;
    }

    /** By common or Latin name, whatever the case of its letters. */
    Optional<Species> named(String name) {
        String asked = plain(name);
        return all.stream()
                .filter(species -> plain(species.common()).equals(asked)
                        || plain(species.latin()).equals(asked))
                .findFirst();
    }

    /** The common names that may be meant: those that share a word with {@code name}, and the one spelled most like it. */
    List<String> near(String name) {
        Set<String> words = Set.of(plain(name).split(" ", -1));
        Set<String> near = new LinkedHashSet<>();
        List<String> names = all.stream()
                .flatMap(species -> Stream.of(plain(species.common()), plain(species.latin())))
                .toList();
        NearestKey.to(plain(name), names).flatMap(this::named).ifPresent(species -> near.add(species.common()));
        all.stream()
                .filter(species -> Arrays.stream(
                                plain(species.common() + " " + species.latin()).split(" ", -1))
                        .anyMatch(words::contains))
                .forEach(species -> near.add(species.common()));
        return List.copyOf(near);
    }

    private static String plain(String name) {
        return name.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
    }
}

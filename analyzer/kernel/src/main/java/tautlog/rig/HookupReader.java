package tautlog.rig;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import tautlog.config.ConfigTable;
import tautlog.config.NearestKey;
import tautlog.config.Reading;

/** Reads one {@code [[hookup]]} and works out its limit. */
final class HookupReader {
    private final ConfigTable table;
    private final Map<String, GearEntry> gearById;
    private final List<String> gearNames;
    private final Optional<Cell> cell;

    /**
     * @param gearById every gear whose id and kind could be read
     * @param gearNames every id that is written, also of gear that could not be read
     */
    HookupReader(ConfigTable table, Map<String, GearEntry> gearById, List<String> gearNames, Optional<Cell> cell) {
        this.table = table;
        this.gearById = gearById;
        this.gearNames = gearNames;
        this.cell = cell;
    }

    /** Empty when something in it is wrong; the problems are noted. */
    Optional<Hookup> read() {
        int before = table.problemsSoFar();
        Optional<String> id = table.required("id", Reading.name());
        boolean isDefault = table.or("default", Reading.flag(), false);
        Optional<Integer> selector = table.optional("selector", Reading.whole(1, 15));
        List<LoadedItem> items = items();
        if (table.problemsSoFar() != before || id.isEmpty() || items.isEmpty()) {
            return Optional.empty();
        }
        cellItem().ifPresent(items::add);
        OptionalInt position = selector.map(OptionalInt::of).orElse(OptionalInt.empty());
        return Optional.of(new Hookup(id.get(), isDefault, position, items, Limit.of(items)));
    }

    private List<LoadedItem> items() {
        List<ConfigTable> written = table.tables("items", "gear");
        if (written.isEmpty()) {
            table.problem(
                    "items",
                    "no item is listed",
                    "Write items = [ { gear = \"…\" } ] with the gear between winch and log.");
        }
        written.forEach(this::noteUnknownGear);
        List<Optional<Place>> places =
                written.stream().map(item -> ItemReader.place(item, gearById)).toList();
        int moving = places.indexOf(Optional.of(Place.MOVING_BLOCK));
        int fixedBlocks = Collections.frequency(places.subList(0, Math.max(0, moving)), Optional.of(Place.BLOCK));
        boolean atDeadEnd = cell.filter(c -> c.at() == CellPlace.DEAD_END).isPresent();
        List<LoadedItem> items = new ArrayList<>();
        Optional<Place> blockBefore = Optional.empty();
        boolean movingBefore = false;
        boolean ropeBefore = false;
        for (int i = 0; i < written.size(); i++) {
            Optional<Place> place = places.get(i);
            boolean isClear = !(movingBefore || ropeBefore) || ItemReader.isStated(written.get(i), gearById);
            ropeBefore |= ItemReader.isRope(written.get(i), gearById);
            if (place.isEmpty() || !isClear) {
                written.get(i).knowEverything();
                continue;
            }
            Doubling doubling = new Doubling(moving >= 0, movingBefore, atDeadEnd, fixedBlocks);
            ItemReader.read(written.get(i), gearById, place.get(), blockBefore, doubling)
                    .ifPresent(items::add);
            if (place.get() == Place.BLOCK || place.get() == Place.MOVING_BLOCK) {
                blockBefore = place;
                movingBefore |= place.get() == Place.MOVING_BLOCK;
            }
        }
        return items;
    }

    private void noteUnknownGear(ConfigTable item) {
        Optional<String> gear = item.required("gear", Reading.text());
        if (gear.isPresent() && !gearNames.contains(gear.get())) {
            String meant = NearestKey.to(gear.get(), gearNames)
                    .map(nearest -> "Did you mean \"" + nearest + "\"? ")
                    .orElse("");
            String known = gearNames.stream().map(name -> '"' + name + '"').collect(Collectors.joining(", "));
            item.problem(
                    "gear",
                    Reading.show(gear.get()) + " is no gear of this rig",
                    meant + "Known: " + (known.isEmpty() ? "none; write [[gear]] first" : known) + ".");
        }
    }

    /** The cell is an item of every hookup; without a known capacity it cannot be judged. */
    private Optional<LoadedItem> cellItem() {
        return cell.flatMap(c -> c.capacityNewtons()
                .map(capacity -> new LoadedItem(
                        LoadedItem.CELL,
                        c.at().word(),
                        c.readingPerTension(),
                        capacity,
                        false,
                        Optional.<BigDecimal>empty(),
                        Optional.<BigDecimal>empty(),
                        List.of("Rating: the load cell's own capacity. Beyond it a reading is \"at least\"."))));
    }
}

package tautlog.service;

import com.google.gson.JsonObject;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import tautlog.config.Reading;

/** Reads one entry from the object of its line. */
final class EntryReader {
    /** The schema of lines that this program writes. */
    static final int SCHEMA = 1;

    private static final Map<String, Verdict> VERDICTS =
            Arrays.stream(Verdict.values()).collect(Collectors.toMap(Reading::word, Function.identity()));

    private final Map<String, Function<LineFields, Optional<? extends Act>>> kinds = Map.of(
            "done", EntryReader::done,
            "inspected", EntryReader::inspected,
            "fitted", fields -> piece(fields).map(Act.Fitted::new),
            "retired", fields -> piece(fields).map(Act.Retired::new),
            "out-of-service", fields -> piece(fields).map(Act.OutOfService::new),
            "worked", EntryReader::worked,
            "withdrawn", EntryReader::withdrawn);
    private final LineFields fields;

    private EntryReader(LineFields fields) {
        this.fields = fields;
    }

    /**
     * What a line says.
     *
     * @param entry empty when it cannot be used
     * @param problems why, one clause each
     * @param remarks of an entry that can: what is not used of it, whole sentences
     */
    record Said(Optional<Entry> entry, List<String> problems, List<String> remarks) {}

    /** @param zone of times without one */
    static Said read(JsonObject json, ZoneId zone) {
        LineFields fields = new LineFields(json, zone);
        fields.whole("schema")
                .filter(schema -> schema.compareTo(BigDecimal.valueOf(SCHEMA)) > 0)
                .ifPresent(schema -> fields.problem("schema", "is of a newer Tautlog"));
        Optional<Entry> entry = new EntryReader(fields).entry();
        return fields.problems().isEmpty()
                ? new Said(entry, List.of(), fields.unknown())
                : new Said(Optional.empty(), List.copyOf(fields.problems()), List.of());
    }

    private Optional<Entry> entry() {
        Optional<String> id = fields.requiredText("id");
        Optional<Function<LineFields, Optional<? extends Act>>> kind = fields.oneOf("kind", kinds);
        boolean isWorked = kind.filter(one -> one.equals(kinds.get("worked"))).isPresent();
        Optional<? extends Act> act = kind.flatMap(one -> one.apply(fields));
        Optional<Instant> at =
                isWorked ? fields.time("at", WrittenTime.FROM) : fields.requiredTime("at", WrittenTime.FROM);
        Optional<Instant> when = act.filter(Act.Worked.class::isInstance)
                .map(worked -> ((Act.Worked) worked).to())
                .or(() -> at);
        Optional<Instant> written = fields.time("written", WrittenTime.FROM).or(() -> when);
        Optional<String> by = fields.text("by");
        Optional<String> winch = fields.text("winch");
        Optional<String> note = fields.text("note");
        Optional<String> replaces = fields.text("replaces");
        if (id.isEmpty() || act.isEmpty() || when.isEmpty() || written.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Entry(id.get(), when.get(), written.get(), by, winch, note, replaces, act.get()));
    }

    private static Optional<Act.Done> done(LineFields fields) {
        return fields.requiredText("task").map(Act.Done::new);
    }

    private static Optional<GearPiece> piece(LineFields fields) {
        Optional<String> gear = fields.requiredText("gear");
        Optional<String> piece = fields.text("piece");
        return gear.map(id -> new GearPiece(id, piece));
    }

    private static Optional<Act.Inspected> inspected(LineFields fields) {
        Optional<GearPiece> gear = piece(fields);
        fields.requiredText("by");
        Optional<Verdict> verdict = fields.oneOf("result", VERDICTS);
        Map<String, BigDecimal> figures = new LinkedHashMap<>();
        for (InspectionFigure figure : InspectionFigure.values()) {
            (figure.isCount() ? fields.whole(figure.key()) : fields.number(figure.key()))
                    .ifPresent(value -> figures.put(figure.key(), value));
        }
        List<String> damage = fields.texts("damage");
        return gear.isPresent() && verdict.isPresent()
                ? Optional.of(new Act.Inspected(gear.get(), verdict.get(), figures, damage))
                : Optional.empty();
    }

    private static Optional<Act.Worked> worked(LineFields fields) {
        Optional<Instant> from = fields.requiredTime("from", WrittenTime.FROM);
        Optional<Instant> to = fields.requiredTime("to", WrittenTime.TO);
        Optional<BigDecimal> shaft = fields.number("shaft_h");
        Optional<BigDecimal> pull = fields.number("pull_h");
        Optional<BigDecimal> pulls = fields.whole("pulls");
        if (from.isEmpty() || to.isEmpty()) {
            return Optional.empty();
        }
        if (!from.get().isBefore(to.get())) {
            fields.problem("to", "does not lie after \"from\"");
            return Optional.empty();
        }
        boolean fits = fits(fields, "shaft_h", shaft, from.get(), to.get());
        fits &= fits(fields, "pull_h", pull, from.get(), to.get());
        return fits ? Optional.of(new Act.Worked(from.get(), to.get(), shaft, pull, pulls)) : Optional.empty();
    }

    private static boolean fits(LineFields fields, String key, Optional<BigDecimal> hours, Instant from, Instant to) {
        boolean isTooLong =
                hours.filter(written -> !Act.Worked.fits(written, from, to)).isPresent();
        if (isTooLong) {
            fields.problem(key, "is more than lies between \"from\" and \"to\"");
        }
        return !isTooLong;
    }

    private static Optional<Act.Withdrawn> withdrawn(LineFields fields) {
        return fields.requiredText("replaces").map(id -> new Act.Withdrawn());
    }
}

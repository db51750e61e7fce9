package tautlog.desk.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import tautlog.desk.notes.NoteBook;
import tautlog.desk.notes.NoteLines;
import tautlog.desk.season.DayKey;
import tautlog.desk.season.DayRecord;
import tautlog.desk.season.SeasonWatch;
import tautlog.desk.season.Trace;
import tautlog.desk.season.TraceAsk;
import tautlog.desk.season.WhatIf;
import tautlog.rig.Rig;

/**
 * What the page asks for, as JSON. Nothing here waits for an analysis: what is not known yet is said to be unknown.
 *
 * <pre>
 *   /api/season  days, winches, progress      /api/trace   columns of a time, limits, marks
 *   /api/day     a day's report               /api/rigs    hookups and limits, from when to when
 *   /api/live    how old the newest sample is /api/notes   GET all, POST one
 *   /api/plan    a plan, or what is wrong     /api/plan/choices   rigs, grounds, units
 * </pre>
 */
final class Api {
    private static final Set<String> PATHS = Set.of(
            "/api/season",
            "/api/day",
            "/api/trace",
            "/api/rigs",
            "/api/live",
            "/api/notes",
            "/api/plan",
            "/api/plan/choices");
    private static final int TRACES_AT_ONCE = 2;
    /** Years 1970 to 2200, and times since the start of an outing, in microseconds. */
    static final long LATEST = 7_258_118_400_000_000L;

    private final SeasonWatch watch;
    private final NoteBook notes;
    private final Trace trace;
    private final PlanApi plans;
    private final Semaphore traces = new Semaphore(TRACES_AT_ONCE, true);

    Api(SeasonWatch watch, NoteBook notes) {
        this.watch = watch;
        this.notes = notes;
        trace = new Trace(watch);
        plans = new PlanApi(watch, trace);
    }

    boolean has(String path) {
        return PATHS.contains(path);
    }

    boolean takes(String path) {
        return path.equals("/api/notes");
    }

    Answer get(String path, Query query) throws RefusedException, IOException {
        return switch (path) {
            case "/api/season" -> season(whatIf(query));
            case "/api/day" -> day(query);
            case "/api/trace" -> trace(query);
            case "/api/rigs" -> Answer.json(RigsJson.of(watch, trace, whatIf(query)));
            case "/api/live" -> Answer.json(LiveJson.of(watch, Instant.now()));
            case "/api/notes" -> notes();
            case "/api/plan" -> plans.plan(query);
            case "/api/plan/choices" -> plans.choices();
            default -> throw new RefusedException(404, "There is nothing here.");
        };
    }

    private WhatIf whatIf(Query query) throws RefusedException {
        WhatIf asked = new WhatIf(query.text("hookup"), query.isGiven("rig"), query.isGiven("calibration"));
        if ((asked.otherRig() && watch.offer().rig().isEmpty())
                || (asked.otherCalibration() && watch.offer().calibration().isEmpty())) {
            throw new RefusedException(400, "No other rig or calibration was given at the start.");
        }
        if (asked.hookup().isPresent() && !mayHave(asked.hookup().get(), asked)) {
            throw new RefusedException(404, "No rig of the folder has a hookup that is called so.");
        }
        return asked;
    }

    /** Until the folder was looked at, every hookup may be one. */
    private boolean mayHave(String hookup, WhatIf asked) {
        List<Rig> rigs = watch.season().outings().stream()
                .flatMap(outing -> trace.rig(outing, asked).stream())
                .toList();
        return rigs.isEmpty()
                || rigs.stream().anyMatch(rig -> rig.hookup(hookup).isPresent());
    }

    private Answer season(WhatIf whatIf) {
        watch.ask(Optional.empty(), whatIf);
        return Answer.json(SeasonJson.of(watch, trace, whatIf));
    }

    private Answer day(Query query) throws RefusedException {
        WhatIf whatIf = whatIf(query);
        DayKey day = watch.season()
                .day(query.required("day"))
                .orElseThrow(() -> new RefusedException(404, "There is no such day in the folder."));
        watch.ask(Optional.of(day), whatIf);
        Optional<DayRecord> record = watch.days().record(day, whatIf);
        return Answer.json(SeasonJson.day(watch.season(), day, record, whatIf));
    }

    private Answer trace(Query query) throws RefusedException, IOException {
        String winch = watch.season()
                .winch(query.required("winch"))
                .orElseThrow(() -> new RefusedException(404, "There is no such winch in the folder."));
        long from = query.number("from", -LATEST, LATEST);
        long to = query.number("to", from + 1, LATEST);
        int columns = (int) query.number("columns", 1, TraceAsk.MOST_COLUMNS);
        TraceAsk ask = new TraceAsk(winch, from, to, columns, query.text("outing"), whatIf(query));
        try {
            if (!traces.tryAcquire(5, TimeUnit.SECONDS)) {
                throw new RefusedException(503, "Too many traces are asked for at once.", "Retry-After", "1");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new RefusedException(503, "The program ends.");
        }
        try {
            return Answer.json(TraceJson.of(trace.view(ask)));
        } finally {
            traces.release();
        }
    }

    private Answer notes() throws IOException {
        JsonArray all = new JsonArray();
        NoteLines lines = notes.lines();
        lines.notes().forEach(note -> all.add(NotesJson.of(note)));
        JsonObject json = new JsonObject();
        json.addProperty("schema", 1);
        json.add("notes", all);
        json.addProperty("unreadable", lines.unreadable());
        return Answer.json(json);
    }

    Answer post(String path, String body) throws RefusedException, IOException {
        if (!takes(path)) {
            throw new RefusedException(404, "There is nothing here.");
        }
        try {
            JsonObject json = JsonParser.parseString(body).getAsJsonObject();
            String winch = watch.season()
                    .winch(json.get("winch").getAsString())
                    .orElseThrow(() -> new RefusedException(404, "There is no such winch in the folder."));
            notes.add(NotesJson.read(json, winch, Instant.now()));
        } catch (JsonParseException
                | IllegalStateException
                | IllegalArgumentException
                | NullPointerException
                | UnsupportedOperationException
                | ArithmeticException
                | java.time.DateTimeException e) {
            throw new RefusedException(
                    400,
                    "A note is {\"winch\": id, \"at_us\": microseconds, \"about\": text, \"text\": 1 to "
                            + NoteBook.LONGEST + " characters}.");
        }
        return notes();
    }
}

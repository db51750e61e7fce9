package tautlog.desk.service;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import tautlog.config.Reading;
import tautlog.desk.gear.GearLife;
import tautlog.desk.report.JsonFields;
import tautlog.service.Complaint;
import tautlog.service.Entry;
import tautlog.service.Ledger;
import tautlog.service.Machine;
import tautlog.service.TaskState;

/**
 * What is due for programs; unknown is null.
 *
 * <pre>
 *   { "schema": 1, "as_of", "ledger", "winches": [ … ], "gear_out_of_service": [ as in a report ], "tasks": [ TASK ], "ledger_lines": [ … ], "notes": [ … ], "recordings_left_out": … }
 *   TASK: winch, task, title, on, standing (overdue, due, soon, unknown, later), may_be, since, since_is (done, inspected, fitted, never),
 *         by, entry, meters: [ { meter, interval, least, greatest } ], calls: [ { kind, at } ], doubts, how, source
 * </pre>
 */
public final class ServiceJson {
    private final JsonFields json;

    private ServiceJson(JsonFields json) {
        this.json = json;
    }

    /** @param lives of all gear, at the time of {@code state} */
    public static String render(ServiceState state, List<GearLife> lives) {
        StringWriter text = new StringWriter();
        try (JsonWriter writer = JsonFields.writer(text)) {
            new ServiceJson(new JsonFields(writer)).state(state, lives);
        } catch (IOException e) {
            throw new UncheckedIOException(e); // a StringWriter throws none
        }
        return text.append('\n').toString();
    }

    private void state(ServiceState state, List<GearLife> lives) throws IOException {
        json.begin();
        json.whole("schema", 1);
        json.time("as_of", Optional.of(state.asOf()));
        json.text("ledger", state.ledgerFile().map(Path::toString));
        json.texts("winches", state.machines().stream().map(Machine::winch).toList());
        json.list(
                "gear_out_of_service",
                lives.stream().flatMap(GearLife::outForPrograms).toList(),
                out -> out.write(json));
        json.list("tasks", state.tasks(), this::task);
        ledgerLines(json, state.ledger());
        json.texts("notes", state.notes());
        state.leftOut().write(json);
        json.end();
    }

    private void task(TaskState state) throws IOException {
        json.text("winch", state.winch());
        json.text("task", state.task().id());
        json.text("title", state.task().title());
        json.text("on", state.task().gear().orElse("winch"));
        json.text("standing", Reading.word(state.standing()));
        json.text("may_be", Reading.word(state.mayBe()));
        json.time("since", state.since().at());
        json.text("since_is", Reading.word(state.since().kind()));
        json.text("by", state.since().entry().flatMap(Entry::by));
        json.text("entry", state.since().entry().map(Entry::id));
        json.list("meters", state.meters(), used -> {
            json.text("meter", used.meter().key());
            json.number("interval", used.interval().doubleValue());
            json.number("least", used.amount().least());
            json.number("greatest", used.amount().greatest());
        });
        json.list("calls", state.calls(), call -> {
            json.text("kind", call.kind());
            json.time("at", call.at());
        });
        json.texts("doubts", state.doubts());
        json.text("how", state.task().how());
        json.text("source", state.task().source());
    }

    /** Lines of the ledger that do not count, or of which something is remarked. */
    static void ledgerLines(JsonFields json, Ledger ledger) throws IOException {
        json.list("ledger_lines", ledger.complaints(), complaint -> line(json, complaint));
    }

    private static void line(JsonFields json, Complaint complaint) throws IOException {
        json.whole("line", complaint.line());
        json.flag("counts", complaint.weight() == Complaint.Weight.REMARK);
        json.text("found", complaint.found());
        json.text("advice", complaint.advice());
    }
}

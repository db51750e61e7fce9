package tautlog.logger.run;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import tautlog.config.NearestKey;
import tautlog.logger.control.MarkAnswer;
import tautlog.logger.live.LiveOutings;
import tautlog.rig.Hookup;
import tautlog.rig.Rig;

/** Marks on their way from the control thread, which waits for the answer, to the reader, which alone may write them. */
final class Marks {
    private static final long ANSWER_SECONDS = 3;

    private record Request(Optional<Hookup> hookup, Optional<String> note, CompletableFuture<MarkAnswer> answer) {}

    private final Rig rig;
    private final ConcurrentLinkedQueue<Request> waiting = new ConcurrentLinkedQueue<>();

    Marks(Rig rig) {
        this.rig = rig;
    }

    /** Hands a mark over and waits until it is written; the control thread. */
    MarkAnswer leave(Optional<String> id, Optional<String> note) throws InterruptedException {
        Optional<Hookup> hookup = id.flatMap(rig::hookup);
        if (id.isPresent() && hookup.isEmpty()) {
            return refused(unknown(id.get()));
        }
        if (id.isEmpty() && note.isEmpty()) {
            return refused("neither a hookup nor a note was given");
        }
        Request request = new Request(hookup, note, new CompletableFuture<>());
        waiting.add(request);
        try {
            return request.answer.get(ANSWER_SECONDS, TimeUnit.SECONDS);
        } catch (ExecutionException | TimeoutException notTaken) {
            waiting.remove(request);
            return refused("the logger is busy and did not take the mark; try again");
        }
    }

    private static MarkAnswer refused(String words) {
        return new MarkAnswer(false, Optional.empty(), words);
    }

    private String unknown(String id) {
        var ids = rig.hookups().stream().map(Hookup::id).toList();
        String nearest = NearestKey.to(id, ids)
                .map(meant -> " Did you mean " + meant + "?")
                .orElse("");
        return "\"" + id + "\" is no hookup of the rig." + nearest + " Allowed: " + String.join(", ", ids) + ".";
    }

    /** Writes what waits; the reader thread. */
    void serve(LiveOutings outings) {
        Request request = waiting.poll();
        while (request != null) {
            Optional<Long> atNumber = outings.mark(request.hookup, request.note);
            request.answer.complete(new MarkAnswer(true, atNumber, words(request, atNumber)));
            request = waiting.poll();
        }
    }

    private static String words(Request request, Optional<Long> atNumber) {
        String what = request.hookup
                .map(hookup -> "hookup " + hookup.id() + (request.note.isPresent() ? " and the note" : ""))
                .orElse("the note");
        return atNumber.map(number -> what + " recorded at sample " + number
                        + (request.hookup.isPresent() ? "; the hookup is in force from there on" : ""))
                .orElse(what + " will be recorded at the first sample: none has come yet");
    }
}

package tautlog.desk.use;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.ToLongFunction;
import tautlog.desk.progress.Progress;
import tautlog.desk.progress.Steps;
import tautlog.recording.RecordingException;

/** Does the same to many things on several threads; results stand in the order of the things, whoever was first. */
final class Workers {
    private final int threads;
    private final Progress progress;

    Workers(int threads, Progress progress) {
        this.threads = threads;
        this.progress = progress;
    }

    /** What is done; called from any thread. */
    interface Task<T, R> {
        R of(T thing) throws RecordingException;
    }

    /**
     * What became of one thing.
     *
     * @param value empty when it was refused
     * @param refusal empty when it was not
     */
    record Result<R>(Optional<R> value, Optional<RecordingException> refusal) {
        /** @throws RecordingException the refusal */
        R orThrow() throws RecordingException {
            if (refusal.isPresent()) {
                throw refusal.get();
            }
            return value.orElseThrow();
        }
    }

    /**
     * What is told of the work.
     *
     * @param what a word for the things
     * @param size how much of a thing is to be read; 0 when it is remembered
     */
    record Counted<T>(String what, ToLongFunction<T> size) {}

    <T, R> List<Result<R>> each(Counted<T> counted, List<T> things, Task<T, R> task) {
        if (things.isEmpty()) {
            return List.of();
        }
        ExecutorService pool = Executors.newFixedThreadPool(Math.min(threads, things.size()));
        try {
            Steps steps = Steps.of(counted.what(), things, counted.size(), progress);
            List<Future<Result<R>>> waiting = new ArrayList<>();
            for (int i = 0; i < things.size(); i++) {
                int at = i;
                waiting.add(pool.submit(() -> {
                    Result<R> result = result(task, things.get(at));
                    steps.done(at);
                    return result;
                }));
            }
            List<Result<R>> results = new ArrayList<>();
            for (Future<Result<R>> one : waiting) {
                results.add(taken(one));
            }
            return results;
        } finally {
            pool.shutdownNow();
        }
    }

    /** Does it to one thing, on the caller's thread. */
    static <T, R> Result<R> result(Task<T, R> task, T thing) {
        try {
            return new Result<>(Optional.of(task.of(thing)), Optional.empty());
        } catch (RecordingException e) {
            return new Result<>(Optional.empty(), Optional.of(e));
        }
    }

    private static <R> R taken(Future<R> one) {
        try {
            return one.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while recordings were read", e);
        } catch (ExecutionException e) {
            throw new IllegalStateException("while recordings were read", e.getCause());
        }
    }
}

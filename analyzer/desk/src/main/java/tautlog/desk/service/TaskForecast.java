package tautlog.desk.service;

import java.util.List;
import java.util.Optional;
import tautlog.service.TaskState;

/**
 * When a task will be due.
 *
 * @param outlook of the intervals of which it can be said; empty when it can of none
 * @param basis how it was worked out, or why not, whole sentences
 */
record TaskForecast(TaskState state, Optional<Outlook> outlook, List<String> basis) {
    TaskForecast {
        basis = List.copyOf(basis);
    }
}

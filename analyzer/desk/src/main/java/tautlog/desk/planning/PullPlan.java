package tautlog.desk.planning;

import java.util.List;
import tautlog.desk.page.Document;
import tautlog.quantity.ForceUnit;
import tautlog.rig.Rig;

/**
 * One plan: a log against the hookups of a rig.
 *
 * @param pulls one for each hookup asked for
 */
public record PullPlan(Rig rig, PlanRequest request, List<PlannedPull> pulls) {
    public PullPlan {
        pulls = List.copyOf(pulls);
    }

    public static PullPlan of(Rig rig, PlanRequest request) {
        return new PullPlan(
                rig,
                request,
                request.hookups(rig).stream()
                        .map(hookup -> PlannedPull.of(rig, hookup, request.haul()))
                        .toList());
    }

    /** As a page for people; the drawings show where drawings can be shown. */
    public Document document(ForceUnit unit) {
        return new PlanPage(this, unit).document();
    }

    /** As one JSON document; see {@link PlanJson}. */
    public String json() {
        return PlanJson.render(this);
    }
}

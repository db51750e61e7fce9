/**
 * The pull that a log needs and what it does to the gear, told before it is made.
 *
 * <pre>
 *   PlanText ──▶ PlanRequest ─┬─▶ PullPlan ─┬─▶ PlanPage   a document for people, drawings from AngleFigures, AngleChart
 *   (all flaws at once)       │  PlannedPull per hookup    │
 *   Rig ──────────────────────┘  BlockSweep  └─▶ PlanJson   one document for programs
 * </pre>
 *
 * <p>Start at {@link tautlog.desk.planning.PullPlan}. Beside every expected pull stands what the winch's full pull does: a log
 * that hangs up does not keep to a plan. No word here calls anything safe. Loads, limits and block factors come from
 * {@code tautlog.rig}, weight and expected pull from {@code tautlog.plan}. Pure: no file, no clock.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.planning;

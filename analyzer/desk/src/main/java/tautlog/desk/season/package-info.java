/**
 * A folder of recordings as it is known so far: which days there are, what was found on each, and a trace of any time. Brought up to date in
 * the background while recordings are written.
 *
 * <pre>
 *   folder ──▶ {@link tautlog.desk.season.SeasonWatch} (one thread) ──▶ {@link tautlog.desk.season.KnownSeason} (what is known, never changes)
 *                 │ analysis, day by day                      │
 *                 ├──▶ {@link tautlog.desk.season.DayIndex}  (what a report says of the day)     ├──▶ {@link tautlog.desk.season.Trace} ──▶ pyramid
 *                 └──▶ pyramids                               └──▶ web
 * </pre>
 *
 * <p>Start at {@link tautlog.desk.season.SeasonWatch}. A day's figures are only ever those that {@link tautlog.desk.analysis.Analysis} gave;
 * until it has, they are unknown. No recording stays open between two looks: an open one would keep a log beside a closed file.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.season;

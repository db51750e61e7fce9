/**
 * From recordings to a report: one pass of the detectors over every outing, a second one for what is drawn.
 *
 * <pre>
 *   files, folders ──▶ {@link tautlog.desk.analysis.History} ──▶ {@link tautlog.desk.analysis.Analysis} ──▶ {@link tautlog.desk.analysis.Study} ──▶ report, page, export
 *                      (outings, each once,   (Detection, hours,   (one for each
 *                       in order of time)      trust, marks)        outing)
 * </pre>
 *
 * <p>Start at {@link tautlog.desk.analysis.Analysis}: it names every stage. Findings always come from the counts, by the
 * detectors that run on the winch; what was said live ({@link tautlog.desk.analysis.LiveSpeech}) is only compared with them.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.analysis;

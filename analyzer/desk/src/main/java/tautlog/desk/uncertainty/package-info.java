/**
 * How far a figure in newtons may be off: an interval that holds the true tension with 95 %, and what makes it so wide.
 *
 * <pre>
 *   calibration.FitQuality ──┐ coefficients, scatter, reference loads
 *   SlackStudy ──────────────┤ zero, noise of this outing
 *   rig.Cell ────────────────┼──▶ {@link tautlog.desk.uncertainty.Doubt} ──▶ {@link tautlog.desk.uncertainty.Budget} ──▶ {@link tautlog.desk.uncertainty.Interval}
 *   FastPeaks, Steepness ────┤ what sampling hides of a rise
 *   NearPeaks ───────────────┘ how many readings lie near a greatest one, and how far noise lifted it
 *
 *   Doubt.related() ──▶ {@link tautlog.desk.uncertainty.RelatedTensions} (rise, rate, settled level, factor) ──▶ {@link tautlog.desk.uncertainty.TwoTensions} ──▶ Budget
 *   Interval ──▶ {@link tautlog.desk.uncertainty.Bounds} of what is no force (share, factor, impulse, rate)
 * </pre>
 *
 * <p>Start at {@link tautlog.desk.uncertainty.Doubt}. Source: JCGM 100:2008 (combination of standard uncertainties, effective degrees of
 * freedom); a part whose distribution is a rectangle is not taken for a normal one when it is the largest, and a
 * bound is added whole. Definitions: {@code analyzer/FINDINGS.md}, Intervals. What is not known is
 * an end that is unknown, never a narrow interval. A static calibration does not prove dynamic accuracy.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.uncertainty;

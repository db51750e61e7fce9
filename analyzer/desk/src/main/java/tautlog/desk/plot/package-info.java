/**
 * Drawings of tension and shaft speed over time.
 *
 * <pre>
 *   samples ──▶ {@link tautlog.desk.plot.Columns} ──▶ {@link tautlog.desk.plot.TimePlot} ──▶ one svg element
 *              (least and greatest of every pixel column)
 * </pre>
 *
 * <p>Start at {@link tautlog.desk.plot.TimePlot}. A column keeps both extremes of all samples that fall into it, so that a
 * peak of one sample is drawn however long the time is. Where nothing is known nothing is drawn but hatching.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.plot;

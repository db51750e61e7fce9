/**
 * Least and greatest of every stretch of a recording, in levels: any span is shown without losing a peak of one sample, and without
 * reading all of its samples.
 *
 * <pre>
 *   level 2   |                least and greatest of 65,536 samples                ...   ×8
 *   level 1   |      8,192       |      8,192       | ...                                ×8
 *   level 0   | 1,024 | 1,024 | ...        kept beside the recording, 1/60 of its size
 *   samples     read from the file, a few blocks, when a column is shorter than level 0
 *
 *   recording ──▶ {@link tautlog.desk.pyramid.OutingPyramid} ──▶ {@link tautlog.desk.pyramid.Band} (so many columns, each exact)
 *                  │    ▲
 *                  ▼    │
 *                {@link tautlog.desk.pyramid.PyramidStore} (a file for each recording)
 * </pre>
 *
 * <p>Start at {@link tautlog.desk.pyramid.OutingPyramid}. Counts are kept as they came: a calibration or a clock that is mended later
 * changes what is shown, never what is kept. What is missing is kept too: a column that lacks samples says so.
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.pyramid;

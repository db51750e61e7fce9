/**
 * What machines and gear did, outing by outing, without what only a report needs.
 *
 * <pre>
 *   recordings ──▶ each outing once ──▶ one light pass, or the cache ──▶ {@link tautlog.desk.use.OutingUse} ──▶ hours, gear, service
 * </pre>
 */
@org.jspecify.annotations.NullMarked
package tautlog.desk.use;

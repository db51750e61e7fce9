/**
 * Tells others what was recorded: each second and each finding, at least once, in order, from the recording itself.
 *
 * <pre>
 *   recorder (commit) ──▶ {@link CommitSignal} ──▶ {@link Publisher}  one thread an outlet
 *                                          │  reads the next few:  {@link Shelf} ▶ {@link Followed} ▶ the recording, reading only
 *                                          │  {@link Portion} of {@link Item}s
 *                                          ▼
 *                                       {@link Outlet}   ◀── {@code mqtt}, {@code influx}
 *                                          │  acknowledged
 *                                          ▼
 *                                       {@link StateFile} state.db: the cursor moves
 * </pre>
 *
 * <p>Start at {@link Publisher}. The recording is the queue: nothing waits in memory but one portion. A publisher may fail in any
 * way: it says so and tries again, and the recording does not notice. Nothing here writes a recording.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.publish;

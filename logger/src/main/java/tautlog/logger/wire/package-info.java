/**
 * The bytes between instrument and logger: found, checked, named when bad, put together into outings.
 *
 * <pre>
 *   bytes ──▶ FrameDecoder ──▶ FrameSink = OutingAssembler ──▶ Evidence, one per outing
 *                 │ rejected(FrameFault)        │
 *                 └─────────────────────────────┴──▶ Tally (what was lost, by name)
 *
 *   bytes ◀── FrameEncoder (simulator; beacon)        bytes ──▶ BeaconDecoder (instrument's side)
 * </pre>
 *
 * <p>Start at {@link tautlog.logger.wire.FrameDecoder}. The format is {@code firmware-notes/wire.md}. Nothing here reads
 * a clock or a port: bytes and times are arguments. Nothing read from the line can make it throw, and a sample costs no
 * allocation.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.wire;

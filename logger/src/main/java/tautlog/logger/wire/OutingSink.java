package tautlog.logger.wire;

import tautlog.sample.Evidence;
import tautlog.sample.Instrument;

/** Is told what an {@link OutingAssembler} finds beside the evidence itself. */
public interface OutingSink {
    /**
     * An outing begins; the one before has been given its {@link Evidence#end}.
     *
     * @param instrument from the HELLO that began it
     * @param firstTick of the first frame that belongs to it, as on the wire (0 to 2³² − 1); what came a little earlier,
     *     like a pulse, can lie before it, even below zero
     * @return takes everything that belongs to this outing
     */
    Evidence begin(Instrument instrument, long firstTick);

    /** The outing's first sample was taken at {@code tick}; comes before its {@link Evidence#tension}. */
    void firstSample(long tick);

    /** The instrument's counter stood at {@code tick} when the bytes that are being read were sent (a HELLO). */
    void now(long tick);

    /**
     * The hookup switch was turned; comes after the {@link Evidence#input} that shows it.
     *
     * @param atNumber the sample number from which it holds
     * @param position 0 none; an outing begins with 0
     */
    void selector(long atNumber, int position);

    /**
     * The outing is over; comes after its {@link Evidence#end}.
     *
     * @param lastTick until which something was heard of the instrument; its last frame's samples included
     */
    void ended(long lastTick);
}

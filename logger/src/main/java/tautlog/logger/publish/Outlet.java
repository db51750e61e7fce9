package tautlog.logger.publish;

import java.util.List;

/** A server that takes what is published; connects when it is needed. One thread. */
public interface Outlet extends AutoCloseable {
    /**
     * Returns when the server has acknowledged all of {@code items}, whose order it keeps.
     *
     * @throws Away if it did not within the time; some may have arrived
     * @throws Refused if the server takes some of them never; some may have arrived
     */
    void deliver(List<Item> items) throws Away, Refused, InterruptedException;

    /** Puts {@code news} in the place of what it said before on the same subject, if this kind of server keeps such. */
    void announce(Announcement news) throws Away, InterruptedException;

    /** Lets go of the connection, in a limited time. */
    @Override
    void close();
}

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

    /** What became of an announcement. */
    enum Announced {
        ACKNOWLEDGED,
        /** This kind of server keeps none: it was not asked, and may be away. */
        NOT_KEPT
    }

    /** Puts {@code news} in the place of what it said before on the same subject, if this kind of server keeps such. */
    Announced announce(Announcement news) throws Away, InterruptedException;

    /** Lets go of the connection, in a limited time. */
    @Override
    void close();
}

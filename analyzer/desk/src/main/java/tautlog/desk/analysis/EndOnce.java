package tautlog.desk.analysis;

import tautlog.sample.Evidence;
import tautlog.sample.ForwardedEvidence;

/** Passes the end on once: a recording that a power cut ended does not tell it, its reader does. */
public final class EndOnce extends ForwardedEvidence {
    private boolean ended;

    public EndOnce(Evidence next) {
        super(next);
    }

    @Override
    public void end() {
        if (!ended) {
            ended = true;
            super.end();
        }
    }
}

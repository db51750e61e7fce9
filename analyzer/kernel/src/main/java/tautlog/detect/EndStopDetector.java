package tautlog.detect;

import tautlog.detect.Finding.Trouble;
import tautlog.detect.Finding.TroubleKind;

/** Finds runs of samples at the converter's end stop. Source: {@code FINDINGS.md}, Sensor trouble. */
final class EndStopDetector implements Detector {
    private final int upper;
    private final int lower;
    private final FindingSink sink;
    private boolean open;
    private long first;
    private long last;

    EndStopDetector(int fullScale, FindingSink sink) {
        upper = fullScale;
        lower = -fullScale - 1;
        this.sink = sink;
    }

    @Override
    public void run(Run run) {
        if (!open && run.greatest < upper && run.least > lower) {
            return;
        }
        for (int k = 0; k < run.n; k++) {
            int count = run.count(k);
            if (count >= upper || count <= lower) {
                take(run.first + k);
            } else {
                end();
            }
        }
    }

    @Override
    public void narrow(Quiet quiet, Run run) {
        if (open) {
            quiet.never();
        }
        quiet.notAbove(upper - 1L);
        quiet.notBelow(lower + 1L);
    }

    private void take(long number) {
        if (!open) {
            open = true;
            first = number;
        }
        last = number;
    }

    @Override
    public void gap(Gap gap) {
        end();
    }

    @Override
    public void end() {
        if (open) {
            open = false;
            sink.finding(new Trouble(TroubleKind.END_STOP, first, last));
        }
    }
}

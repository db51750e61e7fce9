package tautlog.desk.cli;

import tautlog.desk.page.Ink;

/** A command whose text may have colour. */
interface Inked {
    /** Comes before the command runs. */
    void ink(Ink of);
}

package tautlog.desk.season;

/**
 * How far the background work is.
 *
 * @param looked whether the folder was looked into at all
 * @param outingsRead whose trace can be shown
 * @param daysKnown as recorded
 * @param trouble what keeps it from going on; empty when nothing does
 */
public record Progress(boolean looked, int outings, int outingsRead, int days, int daysKnown, String trouble) {
    public boolean isDone() {
        return looked && outings == outingsRead && days == daysKnown;
    }
}

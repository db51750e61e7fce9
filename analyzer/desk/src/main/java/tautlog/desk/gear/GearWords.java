package tautlog.desk.gear;

import tautlog.desk.page.Screen;

/** Words that several sections use. */
final class GearWords {
    private GearWords() {}

    /** {@code 4 May 2026 07:31:02}. */
    static String time(GearLoad load, Screen screen) {
        return load.at()
                .map(screen::dateAndTime)
                .orElseGet(() -> load.notAfter()
                        .map(end -> "before " + screen.dateAndTime(end))
                        .orElse("at a time that is not known"));
    }
}

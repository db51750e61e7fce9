package tautlog.service;

/** What an interval of service is counted in. */
public enum Meter {
    SHAFT_H("shaft_h", "h of the shaft"),
    PULL_H("pull_h", "h in pulls"),
    JOINT_H("joint_h", "h of the joint at its rating"),
    PULLS("pulls", "pulls"),
    /** Local days with an outing or unlogged work. */
    USE_DAYS("use_days", "days of use"),
    /** Local days by the calendar. */
    DAYS("days", "days");

    private final String key;
    private final String words;

    Meter(String key, String words) {
        this.key = key;
        this.words = words;
    }

    /** As in service.toml and JSON. */
    public String key() {
        return key;
    }

    /** The figure of {@code amount} that decides: of the joint's wear, which is a bound from above, the greatest. */
    public double deciding(Amount amount) {
        return this == JOINT_H ? amount.greatest().orElse(amount.least()) : amount.least();
    }

    /** Behind a number. */
    public String words() {
        return words;
    }

    /** Whether it adds up over outings; the others are counted by the calendar. */
    public boolean addsUp() {
        return this != USE_DAYS && this != DAYS;
    }
}

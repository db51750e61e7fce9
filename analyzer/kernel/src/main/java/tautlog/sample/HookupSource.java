package tautlog.sample;

/** Who said which hookup is on; the last two are printed as "assumed". */
public enum HookupSource {
    SELECTOR,
    MARK,
    DEFAULT,
    LOWEST;

    public boolean isAssumed() {
        return this == DEFAULT || this == LOWEST;
    }
}

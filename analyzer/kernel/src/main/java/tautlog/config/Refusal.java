package tautlog.config;

/** A {@link Reading} cannot take what is written. */
public final class Refusal extends Exception {
    private final String found;
    private final String allowed;

    /**
     * @param found what is wrong, without a full stop
     * @param allowed next step and what is allowed, whole sentences
     */
    public Refusal(String found, String allowed) {
        super(found);
        this.found = found;
        this.allowed = allowed;
    }

    public String found() {
        return found;
    }

    public String allowed() {
        return allowed;
    }
}

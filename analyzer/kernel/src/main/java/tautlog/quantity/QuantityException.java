package tautlog.quantity;

/** A text that is not the quantity it should be: says what was found and how to write it. */
public final class QuantityException extends IllegalArgumentException {
    private final String found;
    private final String allowed;

    QuantityException(String found, String allowed) {
        super(found + ". " + allowed);
        this.found = found;
        this.allowed = allowed;
    }

    /** What is wrong, without a full stop: {@code "12,5 kN" is not a force}. */
    public String found() {
        return found;
    }

    /** The next step and what is allowed, whole sentences. */
    public String allowed() {
        return allowed;
    }
}

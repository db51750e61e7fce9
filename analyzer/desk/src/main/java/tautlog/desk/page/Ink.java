package tautlog.desk.page;

/** Whether a text page may use a terminal's bold and colour; colour never carries a meaning alone. */
public enum Ink {
    PLAIN {
        @Override
        String bold(String text) {
            return text;
        }

        @Override
        String loud(String text) {
            return text;
        }
    },
    TERMINAL {
        @Override
        String bold(String text) {
            return "\u001B[1m" + text + "\u001B[0m";
        }

        @Override
        String loud(String text) {
            return "\u001B[1;31m" + text + "\u001B[0m";
        }
    };

    abstract String bold(String text);

    abstract String loud(String text);
}

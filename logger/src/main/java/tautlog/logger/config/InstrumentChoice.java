package tautlog.logger.config;

import java.util.Optional;

/** What kind of instrument stands at the port, and how it is understood. */
public sealed interface InstrumentChoice {
    /** The kind's word in {@code logger.toml}. */
    String word();

    /** What its readings are; empty when it says so itself. */
    Optional<ReadingScale> scale();

    /** Whether it is known which number the bytes of a reading are. */
    default boolean isOrderKnown() {
        return true;
    }

    /** An instrument that speaks the framed wire format ({@code firmware-notes/wire.md}) and has lamps. */
    record Framed() implements InstrumentChoice {
        @Override
        public String word() {
            return "framed";
        }

        @Override
        public Optional<ReadingScale> scale() {
            return Optional.empty();
        }
    }

    /** An indicator that prints a line of text for each reading. */
    record Text(TextForm form, ReadingScale readings) implements InstrumentChoice {
        @Override
        public String word() {
            return "text";
        }

        @Override
        public Optional<ReadingScale> scale() {
            return Optional.of(readings);
        }
    }

    /** A Modbus RTU transmitter that is asked for each reading. */
    record Modbus(ModbusForm form, ReadingScale readings) implements InstrumentChoice {
        @Override
        public String word() {
            return "modbus";
        }

        @Override
        public boolean isOrderKnown() {
            return form.isOrderKnown();
        }

        @Override
        public Optional<ReadingScale> scale() {
            return Optional.of(readings);
        }
    }
}

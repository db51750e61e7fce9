package tautlog.logger.run;

import java.util.Optional;
import java.util.concurrent.ThreadLocalRandom;
import tautlog.logger.beacon.BeaconSender;
import tautlog.logger.config.InstrumentChoice;
import tautlog.logger.config.LoggerConfig;
import tautlog.logger.instrument.FramedFeed;
import tautlog.logger.instrument.InstrumentFeed;
import tautlog.logger.instrument.ReadingOuting;
import tautlog.logger.instrument.modbus.ModbusFeed;
import tautlog.logger.instrument.shaft.ShaftSource;
import tautlog.logger.instrument.shaft.ShaftedFeed;
import tautlog.logger.instrument.text.TextFeed;
import tautlog.logger.wire.OutingSink;

/** The feed for each kind of instrument. */
final class Feeds {
    private Feeds() {}

    /**
     * @param shaft puts another port's shaft into the outings
     * @param beacon goes to an instrument that has lamps
     */
    static InstrumentFeed of(
            LoggerConfig config, Optional<ShaftSource> shaft, OutingSink outings, BeaconSender beacon) {
        return shaft.<InstrumentFeed>map(
                        source -> new ShaftedFeed(source, outings, joined -> tension(config, joined, beacon)))
                .orElseGet(() -> tension(config, outings, beacon));
    }

    /** Without another port's shaft. */
    static InstrumentFeed tension(LoggerConfig config, OutingSink outings, BeaconSender beacon) {
        if (config.instrument() instanceof InstrumentChoice.Text text) {
            return new TextFeed(
                    text.form(),
                    text.readings().unit(),
                    text.readings().decimals(),
                    new ReadingOuting(text.readings(), newBoot(), outings));
        }
        if (config.instrument() instanceof InstrumentChoice.Modbus modbus) {
            ReadingOuting outing = new ReadingOuting(modbus.readings(), newBoot(), outings);
            return new ModbusFeed(
                    modbus.form(), modbus.readings(), config.line().baud(), outing);
        }
        return new FramedFeed(outings, beacon);
    }

    /** No instrument tells one: 32 random bits, so that each start of the logger is known apart. */
    private static long newBoot() {
        return ThreadLocalRandom.current().nextLong(1L << 32);
    }
}

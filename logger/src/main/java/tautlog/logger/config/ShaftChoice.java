package tautlog.logger.config;

import tautlog.logger.port.SerialSetting;

/**
 * A framed instrument on a port of its own that counts the shaft's pulses.
 *
 * @param pulsesPerRevolution of its sensor, 1 to 65535
 */
public record ShaftChoice(SerialSetting line, int pulsesPerRevolution) {}

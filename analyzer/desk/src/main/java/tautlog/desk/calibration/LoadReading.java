package tautlog.desk.calibration;

import java.math.BigDecimal;

/**
 * What the converter said under one reference load.
 *
 * @param line of the file, from 1
 * @param written the load as it is written, with its unit
 * @param newtons the load, exact, 0 or more
 * @param counts the converter's count, or the mean of many
 * @param run the name of the run; empty when nobody gave one
 */
record LoadReading(int line, String written, BigDecimal newtons, BigDecimal counts, Direction direction, String run) {}

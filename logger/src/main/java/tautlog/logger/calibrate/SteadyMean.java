package tautlog.logger.calibrate;

/**
 * A window of steady counts.
 *
 * @param mean of the counts
 * @param sd standard deviation of a single count
 * @param samples of which they were made
 */
public record SteadyMean(double mean, double sd, int samples) {}

package tautlog.logger.config;

/**
 * A satellite receiver on a port of its own.
 *
 * @param port as the system names it, a path that began at the file's folder, or a USB identity
 * @param baud bits per second
 */
public record GpsChoice(String port, int baud) {}

/**
 * Publishes to a server that takes InfluxDB's writes; the only user of the InfluxDB client. Answers are bounded in size and time.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.publish.influx;

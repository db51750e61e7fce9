/**
 * Publishes to an MQTT broker; the only user of the MQTT library. Nothing is subscribed to: whatever a broker sends is held to be
 * hostile beyond the few bytes that acknowledge.
 */
@org.jspecify.annotations.NullMarked
package tautlog.logger.publish.mqtt;

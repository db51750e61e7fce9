/** Quantities that a person writes or reads: forces, lengths, torques with their units; the only conversions. */
@org.jspecify.annotations.NullMarked
package tautlog.quantity;

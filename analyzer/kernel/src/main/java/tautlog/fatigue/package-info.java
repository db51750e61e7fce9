/** Turning points, rainflow, damage. */
@org.jspecify.annotations.NullMarked
package tautlog.fatigue;

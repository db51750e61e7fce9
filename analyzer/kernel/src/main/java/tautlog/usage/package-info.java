/** Hour meters and load bands. */
@org.jspecify.annotations.NullMarked
package tautlog.usage;

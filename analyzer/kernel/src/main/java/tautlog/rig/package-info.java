/** Gear, hookups and their limits, as {@code rig.toml} says. Start at {@link tautlog.rig.Rig}. */
@org.jspecify.annotations.NullMarked
package tautlog.rig;

/** The owner's and reviewer's program. Start at {@code tautlog.desk.cli}. */
@org.jspecify.annotations.NullMarked
package tautlog.desk;

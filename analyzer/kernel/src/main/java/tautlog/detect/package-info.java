/** Streaming detectors: evidence in, findings out, as {@code analyzer/FINDINGS.md} defines. Start at {@link tautlog.detect.Detection}. */
@org.jspecify.annotations.NullMarked
package tautlog.detect;

/**
 * Service that is not forgotten: the ledger of what was done, seen and worked.
 *
 * <p>Start at {@link tautlog.service.Entry}. Nothing here opens a file or reads a clock.
 */
@org.jspecify.annotations.NullMarked
package tautlog.service;

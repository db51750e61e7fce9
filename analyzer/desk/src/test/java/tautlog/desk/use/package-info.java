/** Tests of what machines did: against a slow and obvious version, and of what is remembered. */
package tautlog.desk.use;

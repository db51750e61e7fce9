package tautlog.plan;

import tautlog.quantity.Density;

/**
 * A species of tree and what its green wood weighs.
 *
 * @param wood mass of green wood / its volume
 * @param withBark mass of green wood and the bark round it / volume of the wood
 */
public record Species(String common, String latin, Density wood, Density withBark) {}

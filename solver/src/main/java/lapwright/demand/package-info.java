/**
 * The border between the shop's words and the textbook's: a material's order becomes a problem in
 * integers, a solution becomes patterns and a certificate in the shop's words. First type to read:
 * {@link lapwright.demand.StickDemand}. The only package that imports both shop and problem.
 */
@NullMarked
package lapwright.demand;

import org.jspecify.annotations.NullMarked;

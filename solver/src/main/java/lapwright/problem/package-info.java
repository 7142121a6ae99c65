/**
 * One material's problem in integers, in the textbook's words, and what a solver answers: status,
 * patterns, bound and certificate. First type to read: {@link lapwright.problem.StickProblem}.
 * Imports nothing of the trade side.
 */
@NullMarked
package lapwright.problem;

import org.jspecify.annotations.NullMarked;

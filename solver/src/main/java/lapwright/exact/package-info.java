/**
 * The integer solution of a stick problem and its proof: cheap bounds and heuristics first, then
 * column generation, then search. First type to read: {@link lapwright.exact.StickSolver}. Imports
 * colgen, mip, problem and effort.
 */
@NullMarked
package lapwright.exact;

import org.jspecify.annotations.NullMarked;

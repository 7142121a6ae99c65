/**
 * Solves a stick problem and proves its cost. First type to read: {@link
 * lapwright.exact.StickSolver}. Imports problem and effort.
 */
@NullMarked
package lapwright.exact;

import org.jspecify.annotations.NullMarked;

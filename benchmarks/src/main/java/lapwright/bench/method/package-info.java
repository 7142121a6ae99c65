/**
 * Ways to solve a cutting stock problem behind one interface, by name: Lapwright's own solver, what
 * people do by hand, and general-purpose solvers on textbook models. First type to read: {@link
 * lapwright.bench.method.Method}. OR-Tools is used here by the peers alone.
 */
@NullMarked
package lapwright.bench.method;

import org.jspecify.annotations.NullMarked;

/**
 * How long work may take: time limit, stop signal and progress, all handed in from outside. Nothing
 * here, and nothing in the solver, reads a clock of its own. First type to read: {@link
 * lapwright.effort.Effort}. Imports nothing of the project.
 */
@NullMarked
package lapwright.effort;

import org.jspecify.annotations.NullMarked;

/**
 * The arithmetic of runs, without any optimisation: unbroken stretches between expansion gaps,
 * fewest pieces, permitted splits as a graph, full sticks first. First type to read: {@link
 * lapwright.layout.Stretch}. Imports only shop and measure.
 */
@NullMarked
package lapwright.layout;

import org.jspecify.annotations.NullMarked;

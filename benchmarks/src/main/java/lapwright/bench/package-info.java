/**
 * Measures methods on published and generated instances: reads or generates, runs, checks every
 * answer, and prints tables. First type to read: {@link lapwright.bench.Campaign}. Uses instance
 * and method below it; its main class alone touches the standard streams.
 */
@NullMarked
package lapwright.bench;

import org.jspecify.annotations.NullMarked;

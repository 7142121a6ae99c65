/**
 * Column generation: a master linear program over patterns, a source that prices patterns, and the
 * lower bound that falls out of both. First type to read: {@link
 * lapwright.colgen.ColumnGeneration}. Imports mip, problem and effort.
 */
@NullMarked
package lapwright.colgen;

import org.jspecify.annotations.NullMarked;

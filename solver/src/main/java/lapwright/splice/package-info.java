/**
 * Where runs are joined, decided together with the cutting: a linear program over cutting patterns
 * and splits, columns of both kinds generated against each other, a bound that weighs every length
 * there is, and integer solutions that fix the splits and leave the rest to exact. First type to
 * read: {@link lapwright.splice.SpliceSolver}. Imports exact, colgen, mip, problem and effort.
 */
@NullMarked
package lapwright.splice;

import org.jspecify.annotations.NullMarked;

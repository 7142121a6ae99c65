/**
 * Exact quantities: lengths in 1/16,000 mm, money in 1/10,000 of the currency, prices and weights
 * as exact decimals, and their parsing and formatting. No floating point. First type to read:
 * {@link lapwright.measure.Length}. Imports nothing of the project.
 */
@NullMarked
package lapwright.measure;

import org.jspecify.annotations.NullMarked;

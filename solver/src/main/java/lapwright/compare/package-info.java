/**
 * Questions that need several plans: what ordering for all jobs together saves, what another stock
 * length would cost. First type to read: {@link lapwright.compare.Combining}. Nothing here changes
 * a plan; it makes further ones and sets them side by side.
 */
@NullMarked
package lapwright.compare;

import org.jspecify.annotations.NullMarked;

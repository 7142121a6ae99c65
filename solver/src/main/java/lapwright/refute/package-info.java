/**
 * Do so many sticks suffice? Lists of the patterns that such a solution could use at all, and
 * refutations that an outsider can check pattern by pattern. First type to read: {@link
 * lapwright.refute.Refuter}. Imports colgen, mip, problem and effort.
 */
@NullMarked
package lapwright.refute;

import org.jspecify.annotations.NullMarked;

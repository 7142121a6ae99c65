/**
 * Whose piece is cut from which stick, in which order, on which ticket. First type to read: {@link
 * lapwright.allot.Allotment}. Imports only shop, plan and measure.
 */
@NullMarked
package lapwright.allot;

import org.jspecify.annotations.NullMarked;

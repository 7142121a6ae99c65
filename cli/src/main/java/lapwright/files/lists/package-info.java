/**
 * Cut lists as spreadsheets write them, whatever their habits: headers in any words and order,
 * titles, totals, units in the header, encodings. First type to read: {@link
 * lapwright.files.lists.CutList}. Imports {@code source} and measure.
 */
@NullMarked
package lapwright.files.lists;

import org.jspecify.annotations.NullMarked;

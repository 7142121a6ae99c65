/**
 * The order folder, read and found sound, or all its faults together; and the papers as lists for
 * spreadsheets. First type to read: {@link lapwright.files.OrderFolder}. Imports shop, paperwork
 * and measure, and {@code source} for the parsing.
 */
@NullMarked
package lapwright.files;

import org.jspecify.annotations.NullMarked;

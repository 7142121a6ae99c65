/**
 * The papers and the stock left as lists for spreadsheets, written all or none. First type to read:
 * {@link lapwright.files.papers.CsvSheet}. Imports paperwork, plan and compare for what the lists
 * say, and {@code files.shop} for the columns of on-hand.csv and rack.csv, which the next week
 * reads; reads nothing itself.
 */
@NullMarked
package lapwright.files.papers;

import org.jspecify.annotations.NullMarked;

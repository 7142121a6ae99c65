/**
 * Files that people wrote, read into trees and tables that know where each value stands, and the
 * faults found in them. Values keep the text of their token: {@code 2E1}, {@code 007} and {@code
 * No} stay as typed. Knows nothing of shops. First types to read: {@link
 * lapwright.files.source.Inputs}, which opens the files, {@link lapwright.files.source.Findings}
 * and {@link lapwright.files.source.Fields}. Imports measure, and Jackson as the parser; of the
 * other packages of files none, since all of them read with it.
 */
@NullMarked
package lapwright.files.source;

import org.jspecify.annotations.NullMarked;

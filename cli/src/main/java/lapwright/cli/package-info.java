/**
 * The commands, their help and exit statuses, and the progress line. A command reads its options
 * and hands over; what it does lives in {@link lapwright.Planner} and the packages around it. First
 * type to read: {@link lapwright.cli.Lapwright}. The only package that knows a clock, a process or
 * picocli; it imports files, print, compare and the Planner.
 */
@NullMarked
package lapwright.cli;

import org.jspecify.annotations.NullMarked;

/**
 * The papers as text that people read on a screen or on plain paper: what to buy, the tickets for
 * the saw, where the material goes, what the check found. Turns records of paperwork into lines no
 * wider than asked; decides nothing. First types to read: {@link lapwright.print.Style} and {@link
 * lapwright.print.OrderText}. Imports paperwork and what that is made of; opens no file or stream.
 */
@NullMarked
package lapwright.print;

import org.jspecify.annotations.NullMarked;

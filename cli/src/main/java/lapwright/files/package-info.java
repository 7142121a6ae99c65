/**
 * The order folder: read and found sound, or all its faults together; started, described by
 * schemas, and given job tables out of cut lists. First type to read: {@link
 * lapwright.files.OrderFolder}. Puts together {@code files.shop} and {@code files.jobs}, which do
 * not import it; writes a job table with {@code papers}, from what {@code lists} read.
 */
@NullMarked
package lapwright.files;

import org.jspecify.annotations.NullMarked;

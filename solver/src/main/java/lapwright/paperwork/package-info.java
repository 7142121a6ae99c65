/**
 * What the papers say, as data: the order to suppliers, the tickets for the saw and the lists of
 * the jobs, and the account of material. Computed from a checked plan and from compared plans only,
 * so that nothing unchecked reaches paper; knows no width, colour or file. First types to read:
 * {@link lapwright.paperwork.OrderPaper}, {@link lapwright.paperwork.TicketPaper}, {@link
 * lapwright.paperwork.WastePaper}.
 */
@NullMarked
package lapwright.paperwork;

import org.jspecify.annotations.NullMarked;

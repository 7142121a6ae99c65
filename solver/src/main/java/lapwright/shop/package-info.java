/**
 * What a shop has and what its jobs need, in the trade's words: jobs, pieces, materials, saws,
 * stock and offcuts, as immutable records that check themselves. First type to read: {@link
 * lapwright.shop.ShopOrder}. Imports only measure.
 */
@NullMarked
package lapwright.shop;

import org.jspecify.annotations.NullMarked;

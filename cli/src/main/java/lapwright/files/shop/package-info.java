/**
 * What describes the shop: shop.yaml, materials.yaml, suppliers.yaml, price sheets, on-hand.csv and
 * rack.csv, read into what each material can be cut from. First type to read: {@link
 * lapwright.files.shop.Stock}. Imports {@code source}, the trade side shop and measure; nothing
 * about jobs, so that a shop reads the same whatever it has to make.
 */
@NullMarked
package lapwright.files.shop;

import org.jspecify.annotations.NullMarked;

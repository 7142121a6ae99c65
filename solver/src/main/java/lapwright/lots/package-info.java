/**
 * Which lot each job or run of a material is cut from, where its lots must not mix, and what is cut
 * beside it: chosen together with the cutting, and bounded. First type to read: {@link
 * lapwright.lots.LotPlanning}. Imports demand and splice, for what each lot gives, and shop and
 * plan, since choices and their proof are told in the shop's words.
 */
@NullMarked
package lapwright.lots;

import org.jspecify.annotations.NullMarked;

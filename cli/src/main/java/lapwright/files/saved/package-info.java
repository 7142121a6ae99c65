/**
 * The saved plan, plan.json: written so that reading it back gives an equal plan, which can be
 * checked without the folder that it came from. First type to read: {@link
 * lapwright.files.saved.PlanFile}. Imports plan, shop and measure; compare for what combining
 * saved; {@code source} for the located tree.
 */
@NullMarked
package lapwright.files.saved;

import org.jspecify.annotations.NullMarked;

/**
 * The plan: what to buy, what to cut from which stick, what returns to the rack, and the
 * certificate of its lower bound in the shop's own words. A plan says nothing about how it was
 * found. First type to read: {@link lapwright.plan.OrderPlan}. Imports only shop and measure.
 */
@NullMarked
package lapwright.plan;

import org.jspecify.annotations.NullMarked;

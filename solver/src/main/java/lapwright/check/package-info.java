/**
 * Checks a plan from the shop's data alone, with rules, capacities and knapsacks of its own: no
 * solver, no floating point, nothing shared with whoever made the plan. First type to read: {@link
 * lapwright.check.PlanCheck}. A {@link lapwright.check.CheckedPlan} is made only here, so that
 * nothing unchecked reaches paper. Imports only measure, shop and plan.
 */
@NullMarked
package lapwright.check;

import org.jspecify.annotations.NullMarked;

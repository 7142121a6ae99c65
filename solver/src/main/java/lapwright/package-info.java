/**
 * The whole flow: from the orders of all materials to a checked plan. First type to read: {@link
 * lapwright.Planner}. It turns orders into problems with demand, has them solved by exact, gives
 * every piece its stick with allot, and lets check judge the plan before anybody sees it.
 */
@NullMarked
package lapwright;

import org.jspecify.annotations.NullMarked;

/**
 * The only door to OR-Tools: linear and integer models with one vocabulary of outcomes, and the
 * lazy loading of the native libraries behind them. First type to read: {@link
 * lapwright.mip.LinearModel}. Imports OR-Tools, effort, and nothing else of the project.
 */
@NullMarked
package lapwright.mip;

import org.jspecify.annotations.NullMarked;

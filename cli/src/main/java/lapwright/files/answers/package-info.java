/**
 * Answers to questions about an order, as JSON: what a mark costs, what a material costs, where the
 * material goes. First type to read: {@link lapwright.files.answers.MarkJson}. Nothing here is read
 * back.
 */
@NullMarked
package lapwright.files.answers;

import org.jspecify.annotations.NullMarked;

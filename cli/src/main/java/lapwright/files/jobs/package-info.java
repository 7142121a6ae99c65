/**
 * The jobs and their kits, read, held against the shop and chosen for a command; and one run
 * without a folder, by the same rules. First type to read: {@link lapwright.files.jobs.ChosenJobs}.
 * Imports {@code files.shop} for the materials and saws that a job names, {@code source}, the trade
 * side shop, measure and paperwork, and the rules of runs, to refuse where it is written a run that
 * no split keeps.
 */
@NullMarked
package lapwright.files.jobs;

import org.jspecify.annotations.NullMarked;

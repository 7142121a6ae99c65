package lapwright.effort;

/**
 * Where the work on one subject stands.
 *
 * @param subject what is worked on, such as a material's id
 * @param cost cost of the best solution so far, in the subject's own unit; -1 while there is none
 * @param bound no solution costs less, in the same unit; at least 0
 * @param done true when work on the subject has ended
 */
public record Progress(String subject, long cost, long bound, boolean done) {}

package lapwright.paperwork;

import java.util.Objects;
import lapwright.measure.Length;
import lapwright.measure.Percent;

/**
 * What a job's pieces take of the sticks that they are cut from. Kept offcuts and surplus belong to
 * the shop and are not in it.
 *
 * @param job name of the job
 * @param finished its pieces
 * @param laps overlaps at its joints
 * @param kerf its share of the dust
 * @param endTrim its share of the end trims
 * @param scrap its share of the offcuts that are too short to keep
 */
public record JobShare(
    String job, Length finished, Length laps, Length kerf, Length endTrim, Length scrap) {
  public JobShare {
    Objects.requireNonNull(job);
  }

  /** All that the job uses up. */
  public Length used() {
    return finished.plus(laps).plus(waste());
  }

  /** Kerf, end trims and scrap. */
  public Length waste() {
    return kerf.plus(endTrim).plus(scrap);
  }

  /** Waste of what the job uses up. */
  public Percent wasteShare() {
    return Percent.of(waste().units(), used().units());
  }

  /** The same where so much of its pieces lies under others. */
  JobShare lapped(Length overlaps) {
    return new JobShare(job, finished.minus(overlaps), laps.plus(overlaps), kerf, endTrim, scrap);
  }

  /** Both together, under the name of this one. */
  public JobShare plus(JobShare other) {
    return new JobShare(
        job,
        finished.plus(other.finished),
        laps.plus(other.laps),
        kerf.plus(other.kerf),
        endTrim.plus(other.endTrim),
        scrap.plus(other.scrap));
  }
}

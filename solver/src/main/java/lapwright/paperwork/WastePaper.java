package lapwright.paperwork;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.check.CheckedPlan;
import lapwright.measure.Length;
import lapwright.plan.Account;
import lapwright.plan.Cut;
import lapwright.plan.Division;
import lapwright.plan.MaterialPlan;
import lapwright.plan.OrderPlan;
import lapwright.plan.Pattern;
import lapwright.plan.Proof;
import lapwright.plan.Purchase;
import lapwright.plan.RunLine;
import lapwright.shop.JointRules.Joint;
import lapwright.shop.RunNeed;
import lapwright.shop.Shop;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/**
 * Where the material goes, for the estimator: by material, by job and in total, exact to the unit.
 *
 * @param shop the shop's own facts
 * @param materials in the order of the plan
 * @param jobs all materials together, by name
 * @param total over all materials
 * @param bought stock lengths of all sticks bought
 * @param division of the cost over the jobs; null when that was not asked
 */
public record WastePaper(
    Shop shop,
    List<MaterialPart> materials,
    List<JobShare> jobs,
    Account total,
    Length bought,
    @Nullable Division division) {
  public WastePaper {
    Objects.requireNonNull(shop);
    materials = List.copyOf(materials);
    jobs = List.copyOf(jobs);
  }

  /**
   * One material's account.
   *
   * @param material id
   * @param name what people call it
   * @param account where it goes
   * @param bought stock lengths of the sticks bought
   * @param sticksBought how many sticks that are
   * @param sticksDrawn how many sticks are cut, from everywhere
   * @param proof how sure it is that no plan of this material costs less
   * @param jobs by name
   */
  public record MaterialPart(
      String material,
      String name,
      Account account,
      Length bought,
      int sticksBought,
      int sticksDrawn,
      Proof proof,
      List<JobShare> jobs) {
    public MaterialPart {
      Objects.requireNonNull(material);
      Objects.requireNonNull(name);
      Objects.requireNonNull(account);
      Objects.requireNonNull(proof);
      jobs = List.copyOf(jobs);
    }

    public WasteFigures figures() {
      return WasteFigures.of(bought, account);
    }
  }

  public WasteFigures figures() {
    return WasteFigures.of(bought, total);
  }

  /** The paper of a checked plan. */
  public static WastePaper of(CheckedPlan checked) {
    OrderPlan plan = checked.plan();
    List<MaterialPart> parts = new ArrayList<>();
    SortedMap<String, JobShare> jobs = new TreeMap<>();
    Account total = Account.NOTHING;
    Length bought = Length.ZERO;
    for (MaterialPlan material : plan.materials()) {
      MaterialPart part = part(material);
      parts.add(part);
      part.jobs().forEach(share -> jobs.merge(share.job(), share, JobShare::plus));
      total = total.plus(part.account());
      bought = bought.plus(part.bought());
    }
    return new WastePaper(
        plan.shop(), parts, List.copyOf(jobs.values()), total, bought, plan.division());
  }

  private static MaterialPart part(MaterialPlan plan) {
    Supplies supplies = Supplies.of(plan.order());
    SortedMap<String, JobShare> jobs = new TreeMap<>();
    int drawn = 0;
    for (Pattern pattern : plan.patterns()) {
      StickCount stick = StickCount.of(plan.order(), supplies.named(pattern.supply()), pattern);
      shares(stick, pattern).forEach(share -> jobs.merge(share.job(), share, JobShare::plus));
      drawn = Math.addExact(drawn, pattern.times());
    }
    laps(plan)
        .forEach((job, laps) -> jobs.computeIfPresent(job, (name, share) -> share.lapped(laps)));
    Length bought = Length.ZERO;
    int sticks = 0;
    for (Purchase purchase : plan.purchases()) {
      Supply.Offer offer = supplies.offer(purchase.supply());
      int some = Math.multiplyExact(purchase.packs(), offer.soldIn());
      sticks = Math.addExact(sticks, some);
      bought = bought.plus(offer.length().times(some));
    }
    return new MaterialPart(
        plan.material(),
        plan.order().material().name(),
        plan.account(),
        bought,
        sticks,
        drawn,
        plan.proof(),
        List.copyOf(jobs.values()));
  }

  /** What pieces of runs overlap, by job. */
  private static Map<String, Length> laps(MaterialPlan plan) {
    Map<String, Length> laps = new TreeMap<>();
    for (RunNeed need : plan.order().runs()) {
      if (need.run().rules().joint() instanceof Joint.Lap lap) {
        for (RunLine line : plan.runs()) {
          if (line.job().equals(need.job()) && line.mark().equals(need.run().mark())) {
            laps.merge(need.job(), lap.lap().times(line.pieces().size() - 1L), Length::plus);
          }
        }
      }
    }
    return laps;
  }

  /** Each cause is divided apart and stick by stick, so every column adds up. */
  private static List<JobShare> shares(StickCount stick, Pattern pattern) {
    SortedMap<String, Length> finished = new TreeMap<>();
    Map<String, Length> wedges = new TreeMap<>();
    for (Cut cut : pattern.cuts()) {
      Length wedge = cut.rules().wedges();
      finished.merge(cut.job(), cut.length().minus(wedge).times(cut.qty()), Length::plus);
      wedges.merge(cut.job(), wedge.times(cut.qty()), Length::plus);
    }
    Map<String, Length> kerf = Shares.divide(stick.kerf(), finished);
    Map<String, Length> endTrim = Shares.divide(stick.endTrim(), finished);
    Map<String, Length> scrap =
        Shares.divide(stick.kept() ? Length.ZERO : stick.offcut(), finished);
    int times = pattern.times();
    List<JobShare> shares = new ArrayList<>();
    finished.forEach(
        (job, length) ->
            shares.add(
                new JobShare(
                    job,
                    length.times(times),
                    Length.ZERO,
                    Objects.requireNonNull(kerf.get(job)).times(times),
                    Objects.requireNonNull(endTrim.get(job)).times(times),
                    Objects.requireNonNull(scrap.get(job))
                        .plus(Objects.requireNonNull(wedges.get(job)))
                        .times(times))));
    return shares;
  }
}

package lapwright.bench.method;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPObjective;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPVariable;
import java.util.ArrayList;
import java.util.List;
import lapwright.bench.method.Answer.Outcome;
import lapwright.effort.Effort;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;

/**
 * The model that OR-Tools' documentation teaches for bin packing, in a MIP engine: x_ib pieces of
 * item i come from stick b, y_b says whether it is used.
 *
 * <p>min sum p_b y_b; sum_b x_ib = d_i; sum_i s_i x_ib &lt;= c_b y_b. Equal pieces share a
 * variable, and sticks are offered no more than first-fit needs, which the documentation's own
 * program does not do. Packs add z_j &gt;= sum of y_b / k_j.
 */
final class AssignmentModel implements Method {
  static final long MOST_VARIABLES = 2_000_000;

  private final String name;
  private final String engine;

  AssignmentModel(String name, String engine) {
    this.name = name;
    this.engine = engine;
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public String description() {
    return "the assignment model of OR-Tools' documentation, solved by " + engine;
  }

  @Override
  public Answer solve(StickProblem problem, Effort effort, int threads) {
    Answer firstFit = new FirstFit().solve(problem, effort, threads);
    long lengthBound = LengthBound.of(problem);
    long[] limits = StickLimits.of(problem, firstFit);
    if (StickPatterns.tooManyVariables(problem, limits)) {
      return Answer.nothing(lengthBound, "more than " + MOST_VARIABLES + " variables");
    }
    try (MpRun run = new MpRun(engine)) {
      MPSolver model = run.model();
      MPObjective objective = model.objective();
      List<MPVariable[]> sticks = new ArrayList<>();
      List<Integer> stockOf = new ArrayList<>();
      MPConstraint[] demands = new MPConstraint[problem.items().size()];
      for (int i = 0; i < demands.length; i++) {
        int demand = problem.items().get(i).demand();
        demands[i] = model.makeConstraint(demand, demand);
      }
      for (int j = 0; j < limits.length; j++) {
        Stock stock = problem.stocks().get(j);
        MPVariable packs = model.makeIntVar(0, (double) limits[j], "");
        objective.setCoefficient(packs, (double) stock.packCost());
        MPConstraint supply = model.makeConstraint(0, MPSolver.infinity());
        supply.setCoefficient(packs, stock.packSize());
        for (long b = 0; b < limits[j] && !effort.spent(); b++) {
          MPVariable used = model.makeBoolVar("");
          supply.setCoefficient(used, -1);
          MPConstraint room = model.makeConstraint(0, MPSolver.infinity());
          room.setCoefficient(used, (double) stock.capacity());
          MPVariable[] cut = new MPVariable[demands.length];
          for (int i = 0; i < demands.length; i++) {
            Item item = problem.items().get(i);
            cut[i] =
                model.makeIntVar(
                    0, (double) Math.min(item.demand(), stock.capacity() / item.size()), "");
            room.setCoefficient(cut[i], (double) -item.size());
            demands[i].setCoefficient(cut[i], 1);
          }
          sticks.add(cut);
          stockOf.add(j);
        }
      }
      objective.setMinimization();
      if (effort.spent()) {
        return Answer.nothing(lengthBound, "the limit passed while the model was built");
      }
      if (!run.solve(effort)) {
        return run.isInfeasible()
            ? new Answer(Outcome.IMPOSSIBLE, List.of(), List.of(), -1, 0, "")
            : Answer.nothing(run.bound(lengthBound), "");
      }
      StickPatterns patterns = new StickPatterns(problem);
      for (int b = 0; b < sticks.size(); b++) {
        long[] counts = new long[demands.length];
        for (int i = 0; i < demands.length; i++) {
          counts[i] = run.value(sticks.get(b)[i]);
        }
        patterns.add(stockOf.get(b), counts);
      }
      return patterns.answer(run.isOptimal(), run.bound(lengthBound));
    }
  }
}

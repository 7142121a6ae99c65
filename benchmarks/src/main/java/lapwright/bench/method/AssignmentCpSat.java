package lapwright.bench.method;

import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.ArrayList;
import java.util.List;
import lapwright.bench.method.Answer.Outcome;
import lapwright.effort.Effort;
import lapwright.mip.NativeSolver;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;

/** The model of {@link AssignmentModel} in OR-Tools' constraint solver CP-SAT. */
final class AssignmentCpSat implements Method {
  @Override
  public String name() {
    return "model-cpsat";
  }

  @Override
  public String description() {
    return "the assignment model of OR-Tools' documentation, solved by CP-SAT";
  }

  @Override
  public Answer solve(StickProblem problem, Effort effort, int threads) {
    NativeSolver.load();
    Answer firstFit = new FirstFit().solve(problem, effort, threads);
    long lengthBound = LengthBound.of(problem);
    long[] limits = StickLimits.of(problem, firstFit);
    if (StickPatterns.tooManyVariables(problem, limits)) {
      return Answer.nothing(
          lengthBound, "more than " + AssignmentModel.MOST_VARIABLES + " variables");
    }
    CpModel model = new CpModel();
    int types = problem.items().size();
    List<IntVar[]> sticks = new ArrayList<>();
    List<Integer> stockOf = new ArrayList<>();
    LinearExprBuilder[] cutOf = new LinearExprBuilder[types];
    for (int i = 0; i < types; i++) {
      cutOf[i] = LinearExpr.newBuilder();
    }
    LinearExprBuilder cost = LinearExpr.newBuilder();
    for (int j = 0; j < limits.length; j++) {
      Stock stock = problem.stocks().get(j);
      IntVar packs = model.newIntVar(0, limits[j], "");
      cost.addTerm(packs, stock.packCost());
      LinearExprBuilder usedOfStock = LinearExpr.newBuilder();
      for (long b = 0; b < limits[j] && !effort.spent(); b++) {
        IntVar used = model.newIntVar(0, 1, "");
        usedOfStock.add(used);
        LinearExprBuilder room = LinearExpr.newBuilder();
        room.addTerm(used, -stock.capacity());
        IntVar[] cut = new IntVar[types];
        for (int i = 0; i < types; i++) {
          Item item = problem.items().get(i);
          cut[i] = model.newIntVar(0, Math.min(item.demand(), stock.capacity() / item.size()), "");
          room.addTerm(cut[i], item.size());
          cutOf[i].add(cut[i]);
        }
        model.addLessOrEqual(room, 0);
        sticks.add(cut);
        stockOf.add(j);
      }
      usedOfStock.addTerm(packs, -stock.packSize());
      model.addLessOrEqual(usedOfStock, 0);
    }
    for (int i = 0; i < types; i++) {
      model.addEquality(cutOf[i], problem.items().get(i).demand());
    }
    model.minimize(cost);
    if (effort.spent()) {
      return Answer.nothing(lengthBound, "the limit passed while the model was built");
    }
    return solve(problem, model, sticks, stockOf, lengthBound, effort, threads);
  }

  private static Answer solve(
      StickProblem problem,
      CpModel model,
      List<IntVar[]> sticks,
      List<Integer> stockOf,
      long lengthBound,
      Effort effort,
      int threads) {
    CpSolver solver = new CpSolver();
    solver.getParameters().setNumWorkers(threads);
    solver.getParameters().setCatchSigintSignal(false);
    if (effort.remainingNanos() < Long.MAX_VALUE) {
      solver.getParameters().setMaxTimeInSeconds(effort.remainingNanos() / 1e9);
    }
    CpSolverStatus status = solver.solve(model);
    if (status == CpSolverStatus.INFEASIBLE) {
      return new Answer(Outcome.IMPOSSIBLE, List.of(), List.of(), -1, 0, "");
    }
    long bound = Math.max(lengthBound, (long) Math.ceil(solver.bestObjectiveBound() - 1e-6));
    if (status != CpSolverStatus.OPTIMAL && status != CpSolverStatus.FEASIBLE) {
      return Answer.nothing(bound, "");
    }
    StickPatterns patterns = new StickPatterns(problem);
    for (int b = 0; b < sticks.size(); b++) {
      IntVar[] cut = sticks.get(b);
      long[] counts = new long[cut.length];
      for (int i = 0; i < cut.length; i++) {
        counts[i] = solver.value(cut[i]);
      }
      patterns.add(stockOf.get(b), counts);
    }
    return patterns.answer(status == CpSolverStatus.OPTIMAL, bound);
  }
}

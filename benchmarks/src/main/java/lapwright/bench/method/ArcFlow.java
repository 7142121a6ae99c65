package lapwright.bench.method;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPObjective;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPVariable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import lapwright.bench.method.Answer.Outcome;
import lapwright.effort.Effort;
import lapwright.problem.StickProblem;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;

/**
 * The arc-flow model of J. M. Valerio de Carvalho (Annals of Operations Research 86, 1999), in
 * SCIP. A pattern is a path from 0 to a stock's capacity over marks on the stick; an arc is a piece
 * or waste.
 *
 * <p>Integer flow f on the arcs: it is conserved at every mark, the arcs of an item carry its
 * demand, the flow that leaves at a capacity is the sticks of that stock. Pieces lie in order of
 * falling size and only marks that can be reached that way exist.
 */
final class ArcFlow implements Method {
  @Override
  public String name() {
    return "arc-flow";
  }

  @Override
  public String description() {
    return "the arc-flow model, solved by SCIP";
  }

  @Override
  public Answer solve(StickProblem problem, Effort effort, int threads) {
    PlainProblem.require(problem);
    long lengthBound = LengthBound.of(problem);
    ArcFlowGraph graph = ArcFlowGraph.of(problem);
    if (graph == null) {
      return Answer.nothing(lengthBound, "more than " + ArcFlowGraph.MOST_ARCS + " arcs");
    }
    long[] limits = StickLimits.of(problem, new FirstFit().solve(problem, effort, threads));
    try (MpRun run = new MpRun("SCIP")) {
      MPSolver model = run.model();
      MPObjective objective = model.objective();
      objective.setMinimization();
      Map<Long, MPConstraint> marks = new TreeMap<>();
      MPConstraint[] demands = new MPConstraint[problem.items().size()];
      for (int i = 0; i < demands.length; i++) {
        int demand = problem.items().get(i).demand();
        demands[i] = model.makeConstraint(demand, demand);
      }
      List<MPVariable> flow = new ArrayList<>();
      for (ArcFlowGraph.Arc arc : graph.arcs()) {
        double most =
            arc.isWaste() ? MPSolver.infinity() : problem.items().get(arc.item()).demand();
        MPVariable variable = model.makeIntVar(0, most, "");
        mark(marks, model, arc.from()).setCoefficient(variable, -1);
        mark(marks, model, arc.to()).setCoefficient(variable, 1);
        if (!arc.isWaste()) {
          demands[arc.item()].setCoefficient(variable, 1);
        }
        flow.add(variable);
      }
      List<MPVariable> sticks = new ArrayList<>();
      for (int j = 0; j < limits.length; j++) {
        Stock stock = problem.stocks().get(j);
        MPVariable used = model.makeIntVar(0, (double) limits[j], "");
        if (graph.end(j) > 0) {
          mark(marks, model, 0).setCoefficient(used, 1);
          mark(marks, model, graph.end(j)).setCoefficient(used, -1);
        }
        sticks.add(used);
        MPVariable packs = model.makeIntVar(0, (double) limits[j], "");
        objective.setCoefficient(packs, (double) stock.packCost());
        MPConstraint supply = model.makeConstraint(0, MPSolver.infinity());
        supply.setCoefficient(packs, stock.packSize());
        supply.setCoefficient(used, -1);
      }
      if (effort.spent()) {
        return Answer.nothing(lengthBound, "the limit passed while the model was built");
      }
      if (!run.solve(effort)) {
        return run.isInfeasible()
            ? new Answer(Outcome.IMPOSSIBLE, List.of(), List.of(), -1, 0, "")
            : Answer.nothing(run.bound(lengthBound), "");
      }
      long[] values = flow.stream().mapToLong(run::value).toArray();
      long[] used = sticks.stream().mapToLong(run::value).toArray();
      List<Item> items = problem.items();
      StickPatterns patterns = new StickPatterns(problem);
      graph.paths(values, used, items.size(), patterns::add);
      return patterns.answer(run.isOptimal(), run.bound(lengthBound));
    }
  }

  private static MPConstraint mark(Map<Long, MPConstraint> marks, MPSolver model, long at) {
    return marks.computeIfAbsent(at, position -> model.makeConstraint(0, 0));
  }
}

package lapwright.splice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import lapwright.effort.Effort;
import lapwright.problem.SpliceProblem;
import lapwright.problem.SpliceProblem.Closing;
import lapwright.problem.SpliceProblem.Group;
import lapwright.problem.SpliceProblem.Splits.Anywhere;
import lapwright.problem.SpliceSolution;
import lapwright.problem.SpliceSolution.Split;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import lapwright.problem.StickSolution;
import org.junit.jupiter.api.Test;

/** In sixteenths of an inch, by hand. */
class NeatJointsTest {
  private static final List<Long> MARKS = List.of(16L, 8L, 4L, 2L);
  private static final int SHOPS = 150;

  private static Stock stick(long length, long cut) {
    return new Stock(
        length, length + cut, length + cut, true, -cut, length, 0, 1, Integer.MAX_VALUE);
  }

  private static Anywhere lapped(long total, long lap, int pieces, long shortest, long longest) {
    return new Anywhere(total, lap, pieces, shortest, shortest, longest, 1, Closing.ANY_CUT);
  }

  /** 40 ft of sticks of 10 ft with a lap of 4 in, no piece below 2 ft. */
  @Test
  void aJointIsMovedToWhereAPieceIsWholeAndTheOtherReadsWell() {
    Anywhere rules = lapped(7680, 64, 5, 384, 1920);
    SpliceProblem problem =
        new SpliceProblem(
            List.of(), List.of(stick(1920, 0)), 0, 0, 384, List.of(new Group(1, rules, 0)));
    SpliceSolution solution = SpliceSolver.solve(problem, Effort.unlimited());
    SpliceSolution neat = NeatJoints.of(problem, solution, MARKS);
    assertEquals(
        List.of(new Split(List.of(1920L, 1920L, 1920L, 1792L, 384L), 1)), neat.splits().get(0));
    assertEquals(solution.cost(), neat.cost());
  }

  @Test
  void whatMovedIsTheSameLinesOnTheSameSticks() {
    Random random = new Random(11);
    int moved = 0;
    for (int shop = 0; shop < SHOPS; shop++) {
      SpliceProblem problem = problem(random);
      SpliceSolution solution = SpliceSolver.solve(problem, Effort.unlimited());
      SpliceSolution neat = NeatJoints.of(problem, solution, MARKS);
      assertTrue(solution.status().hasSolution());
      moved += neat.equals(solution) ? 0 : 1;
      assertEquals(solution.cost(), neat.cost());
      assertEquals(solution.bound(), neat.bound());
      StickSolution before = Objects.requireNonNull(solution.cutting());
      StickSolution after = Objects.requireNonNull(neat.cutting());
      assertNotNull(FixedSplits.of(problem, neat.splits()));
      assertEquals(lengths(problem, neat), cut(neat, after));
      assertEquals(sticks(before), sticks(after));
      assertTrue(uncut(problem, neat, after) >= uncut(problem, solution, before));
      for (StickSolution.PatternUse use : after.patterns()) {
        long sizes = 0;
        for (StickSolution.Count count : use.counts()) {
          sizes += (neat.pieces().get(count.item()) + problem.cut()) * count.count();
        }
        assertTrue(sizes <= problem.stocks().get(use.stock()).capacity());
      }
      for (int g = 0; g < problem.groups().size(); g++) {
        Anywhere rules = (Anywhere) problem.groups().get(g).splits();
        int lines = 0;
        for (Split split : neat.splits().get(g)) {
          assertTrue(rules.permits(split.lengths()));
          assertEquals(
              rules.sumOf(split.lengths().size()),
              split.lengths().stream().mapToLong(Long::longValue).sum());
          lines += split.lines();
        }
        assertEquals(problem.groups().get(g).lines(), lines);
      }
    }
    assertTrue(moved > SHOPS / 10, moved + " moved");
  }

  private static SpliceProblem problem(Random random) {
    long cut = random.nextInt(3);
    List<Stock> stocks = List.of(stick(200, cut), stick(160 + random.nextInt(30), cut));
    List<Item> plain = new ArrayList<>();
    for (int i = random.nextInt(3); i > 0; i--) {
      plain.add(new Item(40 + random.nextInt(100) + cut, 1 + random.nextInt(3), false));
    }
    List<Group> groups = new ArrayList<>();
    for (int g = 1 + random.nextInt(2); g > 0; g--) {
      long total = 210 + random.nextInt(200);
      int fewest = total <= 390 ? 2 : 3;
      groups.add(
          new Group(
              1 + random.nextInt(3),
              lapped(total, random.nextInt(10), fewest, 20 + random.nextInt(60), 200),
              0));
    }
    return new SpliceProblem(plain, stocks, cut, 0, 30, groups);
  }

  private static List<Long> lengths(SpliceProblem problem, SpliceSolution solution) {
    List<Long> lengths = new ArrayList<>();
    for (Item item : problem.plain()) {
      for (int i = 0; i < item.demand(); i++) {
        lengths.add(item.size() - problem.cut());
      }
    }
    for (List<Split> splits : solution.splits()) {
      for (Split split : splits) {
        for (int i = 0; i < split.lines(); i++) {
          lengths.addAll(split.lengths());
        }
      }
    }
    lengths.sort(null);
    return lengths;
  }

  private static List<Long> cut(SpliceSolution solution, StickSolution cutting) {
    List<Long> lengths = new ArrayList<>();
    for (StickSolution.PatternUse use : cutting.patterns()) {
      for (StickSolution.Count count : use.counts()) {
        for (int i = 0; i < use.times() * count.count(); i++) {
          lengths.add(solution.pieces().get(count.item()));
        }
      }
    }
    lengths.sort(null);
    return lengths;
  }

  private static List<Integer> sticks(StickSolution cutting) {
    List<Integer> sticks = new ArrayList<>();
    for (StickSolution.PatternUse use : cutting.patterns()) {
      for (int i = 0; i < use.times(); i++) {
        sticks.add(use.stock());
      }
    }
    sticks.sort(null);
    return sticks;
  }

  private static int uncut(SpliceProblem problem, SpliceSolution solution, StickSolution cutting) {
    int uncut = 0;
    for (StickSolution.PatternUse use : cutting.patterns()) {
      StickSolution.Count only = use.counts().get(0);
      boolean whole =
          use.counts().size() == 1
              && only.count() == 1
              && solution.pieces().get(only.item()) + problem.cut()
                  == problem.stocks().get(use.stock()).capacity();
      uncut += whole ? use.times() : 0;
    }
    return uncut;
  }
}

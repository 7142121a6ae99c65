package lapwright.splice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import lapwright.effort.Effort;
import lapwright.problem.SpliceProblem;
import lapwright.problem.SpliceProblem.Arc;
import lapwright.problem.SpliceProblem.Closing;
import lapwright.problem.SpliceProblem.Group;
import lapwright.problem.SpliceProblem.Splits.Anywhere;
import lapwright.problem.SpliceProblem.Splits.Graph;
import lapwright.problem.SpliceSolution;
import lapwright.problem.StickProblem.Stock;
import lapwright.problem.StickSolution.Status;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Runs with an optimum that is known because they were made from it: sticks are cut up whole, and
 * pieces of different sticks joined to runs whose lengths fill just so many sticks.
 */
class CutAndJoinedAgainTest {
  private static final long STICK = 240;
  private static final int STICKS = 6;

  /** Pieces of {@value #STICKS} sticks, shuffled, three a run; the last run takes what is left. */
  private static List<List<Long>> runs(Random random) {
    List<Long> pieces = new ArrayList<>();
    for (int stick = 0; stick < STICKS; stick++) {
      long left = STICK;
      for (int piece = 0; piece < 2; piece++) {
        long length = 20 + random.nextInt((int) (left - 20L * (2 - piece)) - 20);
        pieces.add(length);
        left -= length;
      }
      pieces.add(left);
    }
    Collections.shuffle(pieces, random);
    List<List<Long>> runs = new ArrayList<>();
    for (int from = 0; from < pieces.size(); from += 3) {
      runs.add(pieces.subList(from, Math.min(pieces.size(), from + 3)));
    }
    return runs;
  }

  private static SpliceSolution solve(List<Group> groups) {
    Stock stick = new Stock(STICK, STICK, STICK, true, 0, 1, 1, 1, Integer.MAX_VALUE);
    return SpliceSolver.solve(
        new SpliceProblem(List.of(), List.of(stick), 0, 0, 0, groups), Effort.unlimited());
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6})
  void buttedAnywhere(int seed) {
    List<Group> groups = new ArrayList<>();
    for (List<Long> run : runs(new Random(seed))) {
      long total = run.stream().mapToLong(Long::longValue).sum();
      groups.add(anywhere(total, 0, run.size()));
    }
    SpliceSolution solution = solve(groups);
    assertEquals(STICKS, solution.cost());
    assertEquals(Status.PROVED, solution.status());
  }

  /**
   * Lapped: with a long and a short piece a stick, two or three long ones of different sticks fill
   * more than one or two sticks, so that no line has fewer joints, and their laps are needed.
   */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6})
  void lappedAnywhere(int seed) {
    long lap = 6;
    Random random = new Random(200 + seed);
    List<Group> groups = new ArrayList<>();
    int sticks = 0;
    for (int pieces : new int[] {2, 3, 2, 3}) {
      long sum = 0;
      for (int piece = 0; piece < pieces; piece++) {
        long length = 165 + random.nextInt(35);
        sum += length;
        groups.add(anywhere(STICK - length, 0, 1));
        sticks++;
      }
      groups.add(anywhere(sum - (pieces - 1) * lap, lap, pieces));
    }
    SpliceSolution solution = solve(groups);
    assertEquals(sticks, solution.cost());
    assertEquals(Status.PROVED, solution.status());
  }

  /**
   * Many sticks cut up whole, with cuts that have a width, and joined to runs of three pieces, most
   * of which could be one or two. What those joints take is less than one stick, so that no fewer
   * sticks will do.
   */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4})
  void moreJointsThanAnyLineNeeds(int seed) {
    int sticks = 30;
    long cut = 1;
    long lap = seed % 3;
    Random random = new Random(300 + seed);
    List<Long> pieces = new ArrayList<>();
    for (int stick = 0; stick < sticks; stick++) {
      long longest = 140 + random.nextInt(40);
      long next = 20 + random.nextInt((int) (STICK - 2 * cut - longest) - 40);
      Collections.addAll(pieces, longest, next, STICK - 2 * cut - longest - next);
    }
    Collections.shuffle(pieces, random);
    List<Group> groups = new ArrayList<>();
    long least = 0;
    for (int from = 0; from < pieces.size(); from += 3) {
      long total = pieces.subList(from, from + 3).stream().mapToLong(l -> l).sum() - 2 * lap;
      long fewest = total <= STICK ? 1 : total + lap <= 2 * STICK ? 2 : 3;
      least += total + (fewest - 1) * lap + fewest * cut;
      groups.add(anywhere(total, lap, 3));
    }
    assertTrue(least > (sticks - 1) * (STICK + cut), "fewer sticks might do");
    Stock stick = new Stock(STICK, STICK + cut, STICK + cut, true, 0, 1, 1, 1, Integer.MAX_VALUE);
    SpliceSolution solution =
        SpliceSolver.solve(
            new SpliceProblem(List.of(), List.of(stick), cut, 0, 0, groups), Effort.unlimited());
    assertEquals(sticks, solution.cost());
    assertEquals(Status.PROVED, solution.status());
  }

  private static Group anywhere(long total, long lap, int most) {
    return new Group(1, new Anywhere(total, lap, most, 20, 20, STICK, 1, Closing.ANY_CUT), 0);
  }

  /** The places where they were joined, and decoys. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6})
  void joinedOnlyAtGivenPlaces(int seed) {
    Random random = new Random(100 + seed);
    List<Group> groups = new ArrayList<>();
    for (List<Long> run : runs(random)) {
      long total = run.stream().mapToLong(Long::longValue).sum();
      TreeSet<Long> places = new TreeSet<>();
      long at = 0;
      for (long piece : run.subList(0, run.size() - 1)) {
        at += piece;
        places.add(at);
      }
      for (int decoy = 0; decoy < 3; decoy++) {
        places.add(1L + random.nextInt((int) total - 1));
      }
      groups.add(new Group(1, graph(total, List.copyOf(places), run.size()), 0));
    }
    SpliceSolution solution = solve(groups);
    assertEquals(STICKS, solution.cost());
    assertEquals(Status.PROVED, solution.status());
  }

  /** More places never cost more: the plan for fewer is one for more. */
  @Test
  void morePlacesNeverCostMore() {
    for (int seed = 0; seed < 15; seed++) {
      Random random = new Random(seed);
      List<Group> few = new ArrayList<>();
      List<Group> many = new ArrayList<>();
      for (int run = 0; run < 4; run++) {
        long total = 300 + random.nextInt(300);
        TreeSet<Long> places = new TreeSet<>();
        for (long at = 60; at < total; at += 60) {
          places.add(at);
        }
        few.add(new Group(1 + run % 2, graph(total, List.copyOf(places), 4), 0));
        for (int more = 0; more < 4; more++) {
          places.add(1L + random.nextInt((int) total - 1));
        }
        many.add(new Group(1 + run % 2, graph(total, List.copyOf(places), 4), 0));
      }
      assertTrue(solve(many).bound() <= solve(few).cost(), "seed " + seed);
    }
  }

  private static Graph graph(long total, List<Long> places, int most) {
    List<Long> positions = new ArrayList<>();
    positions.add(0L);
    for (long place : places) {
      for (int k = 1; k < most; k++) {
        positions.add(place);
      }
    }
    int sink = positions.size();
    positions.add(total);
    List<Arc> arcs = new ArrayList<>();
    for (int from = 0; from < sink; from++) {
      int laid = from == 0 ? 0 : (from - 1) % (most - 1) + 1;
      for (int to = from + 1; to <= sink; to++) {
        boolean next = to == sink || (to - 1) % (most - 1) + 1 == laid + 1;
        long length = positions.get(to) - positions.get(from);
        if (next && length > 0 && length <= STICK) {
          arcs.add(new Arc(from, to, length));
        }
      }
    }
    return new Graph(positions, arcs, Closing.ANY_CUT);
  }
}

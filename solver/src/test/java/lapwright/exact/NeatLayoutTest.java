package lapwright.exact;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import lapwright.colgen.Pattern;
import lapwright.exact.NeatLayout.Change;
import lapwright.problem.StickProblem;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.jspecify.annotations.Nullable;

/** What a change does, told from the change alone and from the whole layout. */
class NeatLayoutTest {

  @Property(tries = 400, seed = "12")
  void tellsFromAChangeWhatTheWholeLayoutTells(@ForAll long seed) {
    Reduction reduction = Reduction.of(RandomProblems.small(seed));
    StickProblem problem = reduction.reduced();
    Layout begun =
        problem.stocks().isEmpty()
            ? null
            : new GreedyFill(problem, GreedyFill.longestFirst(problem))
                .complete(new Layout.Builder(problem));
    if (begun == null) {
      return;
    }
    NeatLayout neat = new NeatLayout(reduction, begun);
    Random random = new Random(seed);
    for (int i = 0; i < 60; i++) {
      List<Layout.Use> uses = neat.uses();
      Layout.Use from = uses.get(random.nextInt(uses.size()));
      Layout.Use to = uses.get(random.nextInt(uses.size()));
      List<Change> changes =
          random.nextBoolean()
              ? toOtherStock(from, random.nextInt(problem.stocks().size()))
              : movedPiece(from, to, random);
      Layout before = neat.layout();
      Layout after = changed(problem, before, changes);
      boolean better =
          after != null
              && (after.cost() < before.cost()
                  || (after.cost() == before.cost()
                      && Neatness.of(reduction, after).compareTo(Neatness.of(reduction, before))
                          < 0));
      assertEquals(better, neat.accept(changes));
      assertEquals(better ? after : before, neat.layout());
      assertEquals(Neatness.of(reduction, neat.layout()), neat.neatness());
    }
  }

  private static List<Change> toOtherStock(Layout.Use use, int stock) {
    return List.of(
        new Change(use.pattern(), -use.times()),
        new Change(use.pattern().from(stock), use.times()));
  }

  /** One piece from one stick of a pattern to one of another. */
  private static List<Change> movedPiece(Layout.Use from, Layout.Use to, Random random) {
    if (from.equals(to)) {
      return List.of();
    }
    int item = from.pattern().item(random.nextInt(from.pattern().kinds()));
    Pattern rest = from.pattern().with(item, -1);
    Change more = new Change(to.pattern().with(item, 1), 1);
    Change fewer = new Change(from.pattern(), -1);
    Change none = new Change(to.pattern(), -1);
    return rest.kinds() == 0
        ? List.of(fewer, none, more)
        : List.of(fewer, none, new Change(rest, 1), more);
  }

  private static @Nullable Layout changed(
      StickProblem problem, Layout layout, List<Change> changes) {
    Map<Pattern, Integer> times = new LinkedHashMap<>();
    layout.uses().forEach(use -> times.put(use.pattern(), use.times()));
    for (Change change : changes) {
      if (times.merge(change.pattern(), change.more(), Integer::sum) == 0) {
        times.remove(change.pattern());
      }
    }
    Layout.Builder builder = new Layout.Builder(problem);
    times.forEach(builder::add);
    return builder.buildIfComplete();
  }
}

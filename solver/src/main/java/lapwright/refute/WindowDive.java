package lapwright.refute;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import lapwright.colgen.Pattern;
import lapwright.effort.Effort;
import org.jspecify.annotations.Nullable;

/**
 * Looks for a solution by diving within the window: fixes the whole parts of the linear program's
 * patterns and all that are nearly whole, at least one, prices patterns for what is left, and lets
 * an engine choose among all patterns as soon as few are possible. Where it refuses, a larger part
 * is undone and asked for. Each dive but the first begins with demands that are a little off, so
 * that it goes another way.
 */
final class WindowDive {
  private static final double SHIFT = 0.01;
  private static final double NEARLY_WHOLE = 0.8;
  private static final long PIECES_TO_FINISH = 70;
  private static final int MOST_LISTED = 400;
  private static final int STEPS_BACK = 1;
  private static final long MOST_NODES = 50;

  private final Question question;
  private final WindowTable table;
  private final WindowProgram program;
  private final Effort effort;

  WindowDive(Question question, WindowTable table, WindowProgram program, Effort effort) {
    this.question = question;
    this.table = table;
    this.program = program;
    this.effort = effort;
  }

  /** A question on the way down, and what was fixed before it. */
  private record Place(Question left, List<Pattern> fixed) {}

  /** Dives at most so many times; null when no solution is found. */
  @Nullable List<Pattern> run(int dives) {
    for (int dive = 0; dive < dives && !effort.spent(); dive++) {
      List<Place> places = new ArrayList<>();
      places.add(new Place(question, List.of()));
      List<Pattern> found = dive(places, dive);
      if (found != null) {
        return found;
      }
    }
    return null;
  }

  private @Nullable List<Pattern> dive(List<Place> places, int number) {
    while (!effort.spent()) {
      Place place = places.get(places.size() - 1);
      if (place.left().isAnswered()) {
        return place.fixed();
      }
      program.ask(place.left());
      if (number > 0 && places.size() == 1) {
        program.shiftDemands(number, SHIFT);
      }
      WindowProgram.Ending ending = program.run(effort);
      if (ending == null) {
        return null;
      }
      if (ending.refutes()) {
        return finish(places);
      }
      if (place.left().pieces() <= PIECES_TO_FINISH) {
        List<Pattern> list = list(place.left(), ending.weights());
        if (list != null) {
          return finish(places);
        }
      }
      Place next = next(place, program.values());
      if (next == null) {
        return finish(places);
      }
      places.add(next);
    }
    return null;
  }

  /** Lets the engine choose for what was left at the end, then for what was left some steps ago. */
  private @Nullable List<Pattern> finish(List<Place> places) {
    int at = places.size() - 1;
    for (int back = 0; back <= STEPS_BACK && at >= 0 && !effort.spent(); back++) {
      Place place = places.get(at);
      program.ask(place.left());
      WindowProgram.Ending ending = program.run(effort);
      if (ending != null && !ending.refutes()) {
        List<Pattern> list = list(place.left(), ending.weights());
        if (list == null) {
          return null;
        }
        List<Pattern> chosen = ListChoice.of(place.left(), list, MOST_NODES, effort).patterns();
        if (chosen != null) {
          List<Pattern> all = new ArrayList<>(place.fixed());
          all.addAll(chosen);
          return question.isSolvedBy(all) ? all : null;
        }
      }
      at -= 1;
    }
    return null;
  }

  private @Nullable List<Pattern> list(Question left, List<Long> weights) {
    long reserve = program.reserve(weights);
    List<Pattern> patterns = new ArrayList<>();
    for (int j = 0; j < left.stocks(); j++) {
      Long greatest = table.greatest(j);
      if (greatest == null) {
        return List.of();
      }
      if (!table.list(j, greatest - reserve, patterns, MOST_LISTED)) {
        return null;
      }
    }
    return patterns;
  }

  private record Choice(Pattern pattern, double value, int serial) {
    double part() {
      return value - Math.floor(value + 1e-6);
    }
  }

  private static @Nullable Place next(Place place, Map<Pattern, Double> values) {
    List<Choice> choices = new ArrayList<>();
    values.forEach((pattern, value) -> choices.add(new Choice(pattern, value, choices.size())));
    Question left = place.left();
    List<Pattern> fixed = new ArrayList<>(place.fixed());
    for (Choice choice : choices) {
      int whole = (int) Math.floor(choice.value() + 1e-6);
      left = fix(left, choice.pattern(), whole, fixed);
    }
    choices.sort(
        Comparator.comparingDouble(Choice::part).reversed().thenComparingInt(Choice::serial));
    for (Choice choice : choices) {
      if (choice.part() >= NEARLY_WHOLE || fixed.size() == place.fixed().size()) {
        left = fix(left, choice.pattern(), 1, fixed);
      }
    }
    return fixed.size() == place.fixed().size() ? null : new Place(left, fixed);
  }

  private static Question fix(Question left, Pattern pattern, int times, List<Pattern> fixed) {
    int possible = Math.min(times, left.mostTimes(pattern));
    if (possible <= 0 || pattern.kinds() == 0) {
      return left;
    }
    for (int k = 0; k < possible; k++) {
      fixed.add(pattern);
    }
    return left.without(pattern, possible);
  }
}

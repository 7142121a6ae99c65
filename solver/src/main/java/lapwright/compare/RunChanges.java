package lapwright.compare;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import lapwright.compare.Change.Kind;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.shop.JointPlaces;
import lapwright.shop.JointRules;
import lapwright.shop.JointRules.Joint;
import lapwright.shop.JointRules.JointCount;
import lapwright.shop.Run;
import lapwright.shop.RunNeed;
import org.jspecify.annotations.Nullable;

/**
 * Runs that are no longer as they were when a plan was made: how many lines, and each rule by the
 * name that job files give it.
 */
final class RunChanges {
  private static final String NONE = "none";

  private final LengthStyle style;

  RunChanges(LengthStyle style) {
    this.style = style;
  }

  /** A run as a job lists it, with its lines over all copies. */
  private record Lines(Run run, int lines) {}

  List<Change> of(String material, List<RunNeed> planned, List<RunNeed> now) {
    Map<String, Lines> before = byName(planned);
    Map<String, Lines> after = byName(now);
    Map<String, Lines> all = new LinkedHashMap<>(before);
    after.forEach(all::putIfAbsent);
    List<Change> changes = new ArrayList<>();
    all.forEach(
        (name, one) -> {
          @Nullable Lines was = before.get(name);
          @Nullable Lines is = after.get(name);
          String lines = name + ", lines of " + style.exact(one.run().length());
          add(changes, material, lines, count(was), count(is));
          if (was != null && is != null) {
            Map<String, String> rulesBefore = rules(was.run());
            rules(is.run())
                .forEach(
                    (rule, value) ->
                        add(
                            changes,
                            material,
                            name + ", " + rule,
                            rulesBefore.getOrDefault(rule, NONE),
                            value));
          }
        });
    return changes;
  }

  private static Map<String, Lines> byName(List<RunNeed> runs) {
    Map<String, Lines> byName = new LinkedHashMap<>();
    for (RunNeed need : runs) {
      byName.merge(
          need.run().mark() + " of " + need.job(),
          new Lines(need.run(), need.lines()),
          (a, b) -> new Lines(b.run(), Math.addExact(a.lines(), b.lines())));
    }
    return byName;
  }

  private static String count(@Nullable Lines run) {
    return Integer.toString(run == null ? 0 : run.lines());
  }

  private static void add(
      List<Change> changes, String material, String what, String planned, String now) {
    if (!planned.equals(now)) {
      changes.add(new Change(Kind.PIECES, material, what, planned, now));
    }
  }

  private Map<String, String> rules(Run run) {
    JointRules rules = run.rules();
    Map<String, String> words = new LinkedHashMap<>();
    words.put("length", style.exact(run.length()));
    words.put("add-at-start", style.exact(run.addAtStart()));
    words.put("add-at-end", style.exact(run.addAtEnd()));
    words.put("joint", rules.joint() instanceof Joint.Lap ? "lap" : "butt");
    words.put("lap", rules.joint() instanceof Joint.Lap lap ? style.exact(lap.lap()) : NONE);
    words.put(
        "butt-gap", rules.joint() instanceof Joint.Butt butt ? style.exact(butt.gap()) : NONE);
    words.put("places of joints", places(rules.places()));
    words.put("shortest-piece", style.exact(rules.pieces().shortest()));
    words.put("shortest-at-end", ifAny(rules.pieces().shortestAtEnd()));
    words.put("longest-piece", ifAny(rules.pieces().longest()));
    words.put("step", style.exact(rules.pieces().step()));
    words.put("closing", rules.closing().where().word());
    words.put("full-sticks", rules.closing().othersWhole() ? "yes" : "no");
    words.put("leave-long", style.exact(rules.closing().leaveLong()));
    words.put("joints", count(rules.count()));
    words.put("stagger", style.exact(rules.stagger()));
    JointRules.@Nullable Expansion expansion = rules.expansion();
    words.put("longest-unbroken", ifAny(expansion == null ? null : expansion.longestUnbroken()));
    words.put("gap", ifAny(expansion == null ? null : expansion.gap()));
    return words;
  }

  private String ifAny(@Nullable Length length) {
    return length == null ? NONE : style.exact(length);
  }

  private String places(JointPlaces places) {
    if (places instanceof JointPlaces.At at) {
      return at.positions().isEmpty()
          ? NONE
          : at.positions().stream().map(style::exact).collect(Collectors.joining(" and "));
    }
    return places instanceof JointPlaces.Bearings bearings
        ? "bearings from "
            + style.exact(bearings.first())
            + " every "
            + style.exact(bearings.spacing())
        : "anywhere";
  }

  private static String count(JointCount count) {
    if (count instanceof JointCount.AtMost most) {
      return "at most " + most.joints();
    }
    int extra = ((JointCount.BeyondFewest) count).extra();
    return extra == 0 ? "the fewest" : extra + " beyond the fewest";
  }
}

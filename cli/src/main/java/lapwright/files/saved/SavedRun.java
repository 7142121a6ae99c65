package lapwright.files.saved;

import java.time.LocalDate;
import java.util.List;
import lapwright.files.source.Values;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.shop.JointPlaces;
import lapwright.shop.JointRules;
import lapwright.shop.JointRules.ClosingPiece;
import lapwright.shop.JointRules.Expansion;
import lapwright.shop.JointRules.Joint;
import lapwright.shop.JointRules.JointCount;
import lapwright.shop.JointRules.Pieces;
import lapwright.shop.Run;
import lapwright.shop.RunNeed;
import org.jspecify.annotations.Nullable;

/** A run that a job needs, in a saved plan; rules that a run does not have are left out. */
final class SavedRun {
  private static final int MOST_PLACES = 1_000;

  private SavedRun() {}

  /**
   * Writes a run.
   *
   * @param times how many times the job is built
   */
  static void write(Json json, RunNeed need, int times, LengthStyle style) {
    Run run = need.run();
    json.words("material", run.material());
    json.words("mark", run.mark());
    json.length("length", run.length(), style);
    json.number("qty", run.qty());
    if (need.copies() != times) {
      json.number("copies", need.copies());
    }
    if (need.firstLine() != 1) {
      json.number("firstCopy", need.firstCopy());
      json.number("firstLine", need.firstLine());
    }
    if (!need.settled().isEmpty()) {
      json.list(
          "settled",
          need.settled(),
          line -> json.list("joints", line, place -> json.length("at", place, style)));
    }
    json.wordsIfAny("for", run.purpose());
    mmIfAny(json, "addAtStartMm", run.addAtStart());
    mmIfAny(json, "addAtEndMm", run.addAtEnd());
    JointRules rules = run.rules();
    if (rules.joint() instanceof Joint.Lap lap) {
      json.words("joint", "lap");
      json.mm("lapMm", lap.lap());
    } else if (rules.joint() instanceof Joint.Butt butt) {
      json.words("joint", "butt");
      mmIfAny(json, "buttGapMm", butt.gap());
    }
    if (rules.places() instanceof JointPlaces.At at) {
      json.list("jointsAt", at.positions(), place -> json.length("at", place, style));
    } else if (rules.places() instanceof JointPlaces.Bearings bearings) {
      json.object(
          "bearings",
          () -> {
            json.mm("firstMm", bearings.first());
            json.mm("spacingMm", bearings.spacing());
          });
    }
    pieces(json, rules);
    if (rules.count() instanceof JointCount.AtMost most) {
      json.number("mostJoints", most.joints());
    } else if (rules.count() instanceof JointCount.BeyondFewest beyond && beyond.extra() > 0) {
      json.number("extraJoints", beyond.extra());
    }
    mmIfAny(json, "staggerMm", rules.stagger());
    Expansion expansion = rules.expansion();
    if (expansion != null) {
      json.mm("longestUnbrokenMm", expansion.longestUnbroken());
      json.mm("gapMm", expansion.gap());
    }
  }

  private static void pieces(Json json, JointRules rules) {
    Pieces pieces = rules.pieces();
    mmIfAny(json, "shortestPieceMm", pieces.shortest());
    json.mm("shortestAtEndMm", pieces.shortestAtEnd());
    json.mm("longestPieceMm", pieces.longest());
    json.mm("stepMm", pieces.step());
    ClosingPiece closing = rules.closing();
    json.words("closing", closing.where().word());
    if (closing.othersWhole()) {
      json.truth("fullSticks", true);
    }
    mmIfAny(json, "leaveLongMm", closing.leaveLong());
  }

  private static void mmIfAny(Json json, String field, Length length) {
    if (!length.isZero()) {
      json.mm(field, length);
    }
  }

  static RunNeed read(PlanFields fields, String job, @Nullable LocalDate due, int times) {
    Expansion expansion =
        fields.has("longestUnbrokenMm")
            ? new Expansion(fields.mm("longestUnbrokenMm"), fields.mm("gapMm"))
            : null;
    JointCount count =
        fields.has("mostJoints")
            ? new JointCount.AtMost(fields.count("mostJoints"))
            : new JointCount.BeyondFewest(
                fields.has("extraJoints") ? fields.count("extraJoints") : 0);
    JointRules rules =
        new JointRules(
            joint(fields),
            places(fields),
            new Pieces(
                orZero(fields, "shortestPieceMm"),
                fields.mmIfAny("shortestAtEndMm"),
                fields.mmIfAny("longestPieceMm"),
                fields.mm("stepMm")),
            count,
            new ClosingPiece(
                fields.word("closing", Words.CLOSING),
                fields.has("fullSticks") && fields.truth("fullSticks"),
                orZero(fields, "leaveLongMm")),
            orZero(fields, "staggerMm"),
            expansion);
    RunNeed need =
        new RunNeed(
            job,
            due,
            fields.has("copies") ? fields.count("copies") : times,
            new Run(
                fields.words("material"),
                fields.words("mark"),
                fields.mm("lengthMm"),
                fields.count("qty"),
                orZero(fields, "addAtStartMm"),
                orZero(fields, "addAtEndMm"),
                rules,
                fields.wordsIfAny("for")),
            fields.has("firstCopy") ? fields.count("firstCopy") : 1,
            fields.has("firstLine") ? fields.count("firstLine") : 1,
            settled(fields));
    refuseEndless(fields, need);
    return need;
  }

  private static List<List<Length>> settled(PlanFields fields) {
    if (!fields.has("settled")) {
      return List.of();
    }
    return fields.list("settled", line -> line.list("joints", place -> place.mm("atMm")));
  }

  /** No folder gives such numbers, and the check would take for ever. */
  private static void refuseEndless(PlanFields fields, RunNeed need) {
    if ((long) need.run().qty() * need.copies() > Values.MOST
        || need.firstLine() > Values.MOST
        || need.firstCopy() > Values.MOST) {
      throw fields.damaged("qty", Integer.toString(need.run().qty()), "too many lines");
    }
    if (need.run().rules().places() instanceof JointPlaces.Bearings bearings
        && need.run().length().units() / bearings.spacing().units() > MOST_PLACES) {
      throw fields.damaged("bearings", "", "too many in one line");
    }
  }

  private static Joint joint(PlanFields fields) {
    return switch (fields.words("joint")) {
      case "lap" -> new Joint.Lap(fields.mm("lapMm"));
      case "butt" -> new Joint.Butt(orZero(fields, "buttGapMm"));
      default -> throw fields.damaged("joint", fields.words("joint"), "not one of lap, butt");
    };
  }

  private static JointPlaces places(PlanFields fields) {
    if (fields.has("jointsAt")) {
      List<Length> positions = fields.list("jointsAt", place -> place.mm("atMm"));
      return new JointPlaces.At(positions);
    }
    if (fields.has("bearings")) {
      PlanFields bearings = fields.object("bearings");
      return new JointPlaces.Bearings(bearings.mm("firstMm"), bearings.mm("spacingMm"));
    }
    return new JointPlaces.Anywhere();
  }

  private static Length orZero(PlanFields fields, String field) {
    Length length = fields.mmIfAny(field);
    return length == null ? Length.ZERO : length;
  }
}

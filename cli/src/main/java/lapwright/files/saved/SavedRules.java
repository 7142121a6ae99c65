package lapwright.files.saved;

import lapwright.measure.Angle;
import lapwright.measure.Length;
import lapwright.measure.Reading;
import lapwright.shop.CutRules;
import lapwright.shop.PieceEnds;

/** How a piece is to be cut, in a saved plan: fields that are left out for plain pieces. */
final class SavedRules {
  private static final String ACROSS = "opposite-edges";

  private SavedRules() {}

  static void write(Json json, CutRules rules) {
    PieceEnds ends = rules.ends();
    if (!ends.isSquare()) {
      json.words("ends", ends.word());
      if (ends.pointsAcross()) {
        json.words("longPoints", ACROSS);
      }
      json.mm("depthMm", rules.depth());
    }
    if (rules.oneWay()) {
      json.truth("oneWay", true);
    }
    if (!rules.mayBeShort().isZero()) {
      json.mm("mayBeShortMm", rules.mayBeShort());
    }
  }

  static CutRules read(PlanFields fields) {
    Length depth = fields.mmIfAny("depthMm");
    Length mayBeShort = fields.mmIfAny("mayBeShortMm");
    CutRules rules =
        new CutRules(
            ends(fields),
            depth == null ? Length.ZERO : depth,
            fields.has("oneWay") && fields.truth("oneWay"),
            mayBeShort == null ? Length.ZERO : mayBeShort);
    return rules.equals(CutRules.PLAIN) ? CutRules.PLAIN : rules;
  }

  private static PieceEnds ends(PlanFields fields) {
    if (!fields.has("ends")) {
      return PieceEnds.SQUARE;
    }
    String[] both = fields.words("ends").split("/", -1);
    if (both.length == 2
        && Angle.read(both[0]) instanceof Reading.Value<Angle> first
        && Angle.read(both[1]) instanceof Reading.Value<Angle> second) {
      return new PieceEnds(
          first.value(), second.value(), fields.wordsIfAny("longPoints").equals(ACROSS));
    }
    throw fields.damaged("ends", fields.words("ends"), "not two angles");
  }
}

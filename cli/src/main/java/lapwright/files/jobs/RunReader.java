package lapwright.files.jobs;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lapwright.files.source.Fields;
import lapwright.files.source.Findings;
import lapwright.files.source.Node;
import lapwright.files.source.Note;
import lapwright.files.source.Values;
import lapwright.measure.Length;
import lapwright.measure.SafeSide;
import lapwright.shop.JointPlaces;
import lapwright.shop.JointRules;
import lapwright.shop.JointRules.ClosingPiece;
import lapwright.shop.JointRules.Expansion;
import lapwright.shop.JointRules.Joint;
import lapwright.shop.JointRules.JointCount;
import lapwright.shop.JointRules.Pieces;
import lapwright.shop.JointRules.Where;
import lapwright.shop.Run;
import org.jspecify.annotations.Nullable;

/** Reads one run: lines of one length, and what the drawings allow where their pieces meet. */
final class RunReader {
  /** More places than this in a line are a slip of the pen. */
  private static final int MOST_PLACES = 500;

  private static final Map<String, Boolean> JOINTS = Values.ordered("butt", true, "lap", false);
  private static final Map<String, Where> CLOSING = closing();

  private final Fields fields;
  private final Findings findings;
  private boolean atFault;

  private RunReader(Fields fields, Findings findings) {
    this.fields = fields;
    this.findings = findings;
  }

  private static Map<String, Where> closing() {
    Map<String, Where> words = new LinkedHashMap<>();
    for (Where where : Where.values()) {
      words.put(where.word(), where);
    }
    return words;
  }

  /**
   * Reads the field {@code runs} of a job or a kit.
   *
   * @param step lengths of pieces are multiples of it where a run gives no step
   */
  static void readInto(Fields content, Length step, JobDraft job, Findings findings) {
    Node.Entry runs = content.entry("runs");
    Fields materials = runs == null ? null : Fields.named(runs.value(), "runs", findings);
    if (materials == null) {
      return;
    }
    for (Node.Entry material : materials.entries()) {
      List<Node> items = materials.list(material.key());
      int n = 0;
      for (Node item : items == null ? List.<Node>of() : items) {
        Fields fields =
            Fields.of(item, materials.way(material.key()) + " > " + ++n, JobFields.RUN, findings);
        if (fields == null) {
          continue;
        }
        Run run = read(fields, material.key(), step, findings);
        if (run != null) {
          job.add(item.place(), run, fields, findings);
        }
      }
    }
  }

  /** Reads one run; null when it is not sound. */
  static @Nullable Run read(Fields fields, String material, Length step, Findings findings) {
    return new RunReader(fields, findings).run(material, step);
  }

  private @Nullable Run run(String material, Length step) {
    String mark = required("mark", fields.words("mark"), "Name the run, such as mark: T1.");
    if (mark != null && (mark.isEmpty() || mark.equals("-"))) {
      fault("mark", mark, "no mark", "Name the run, such as T1: its pieces are named after it.");
    }
    Length length =
        required(
            "length",
            fields.positive("length", SafeSide.LONGER),
            "Give the length that is to be covered, such as length: 36'-8\".");
    Integer qty = required("qty", fields.quantity("qty", 1), "Say how many lines, such as qty: 2.");
    String purpose = noted("for", fields.words("for"));
    Length addAtStart = lengthOrZero("add-at-start", SafeSide.LONGER);
    Length addAtEnd = lengthOrZero("add-at-end", SafeSide.LONGER);
    Joint joint = joint();
    JointPlaces places = places(length);
    Pieces pieces = pieces(step);
    JointCount count = count();
    ClosingPiece closing = closingPiece();
    Length stagger = lengthOrZero("stagger", SafeSide.LONGER);
    Expansion expansion = expansion(length);
    if (atFault || mark == null || length == null || qty == null || joint == null) {
      return null;
    }
    return new Run(
        material,
        mark,
        length,
        qty,
        addAtStart,
        addAtEnd,
        new JointRules(joint, places, pieces, count, closing, stagger, expansion),
        purpose == null ? "" : purpose);
  }

  private @Nullable Joint joint() {
    Boolean butt =
        required(
            "joint",
            fields.word("joint", JOINTS),
            "Say how its pieces meet: joint: lap or joint: butt.");
    Length lap = noted("lap", fields.positive("lap", SafeSide.LONGER));
    Length gap = noted("butt-gap", fields.length("butt-gap", SafeSide.SHORTER));
    if (butt == null) {
      return null;
    }
    if (butt) {
      if (fields.has("lap")) {
        fault("lap", "", "a lap, and its pieces butt", "Write joint: lap, or delete the lap.");
      }
      return new Joint.Butt(gap == null ? Length.ZERO : gap);
    }
    if (fields.has("butt-gap")) {
      fault("butt-gap", "", "a gap, and its pieces lap", "Write joint: butt, or delete it.");
    }
    if (!fields.has("lap")) {
      atFault = true;
      fields.missing("lap", "Write the lap that the drawings give, such as lap: 2\".");
    }
    return lap == null ? null : new Joint.Lap(lap);
  }

  private JointPlaces places(@Nullable Length covered) {
    if (fields.has("joints-at") && fields.has("bearings")) {
      fault(
          "bearings", "", "joints-at tells already where it may be joined", "Keep one of the two.");
      return new JointPlaces.Anywhere();
    }
    if (fields.has("joints-at")) {
      return positions(covered);
    }
    return fields.has("bearings") ? bearings(covered) : new JointPlaces.Anywhere();
  }

  private JointPlaces positions(@Nullable Length covered) {
    List<Node> items = noted("joints-at", fields.list("joints-at"));
    Values values = new Values(findings);
    List<Length> positions = new ArrayList<>();
    int n = 0;
    for (Node item : items == null ? List.<Node>of() : items) {
      String way = fields.way("joints-at") + " > " + ++n;
      String text = item instanceof Node.Scalar scalar ? scalar.text() : "";
      Length position = values.positive(item.place(), way, text, SafeSide.LONGER);
      if (position == null) {
        atFault = true;
      } else if (!positions.isEmpty()
          && !position.isLongerThan(positions.get(positions.size() - 1))) {
        atFault = true;
        findings.fault(
            item.place(),
            way,
            text,
            "not after the place before it",
            "List the places once each, measured from the start, the nearest first.");
      } else {
        positions.add(position);
        if (covered != null && position.isLongerThan(covered)) {
          findings.note(
              Note.Kind.WARNING, item.place(), way, text + " lies beyond the end of the run");
        }
      }
    }
    if (positions.size() > MOST_PLACES) {
      fault("joints-at", "", "more than " + MOST_PLACES + " places", "Is the list right?");
      return new JointPlaces.Anywhere();
    }
    return new JointPlaces.At(positions);
  }

  private JointPlaces bearings(@Nullable Length covered) {
    Node.Entry entry = fields.entry("bearings");
    Fields bearings =
        entry == null
            ? null
            : Fields.of(entry.value(), fields.way("bearings"), JobFields.BEARINGS, findings);
    if (bearings == null) {
      atFault = true;
      return new JointPlaces.Anywhere();
    }
    Length first = bearings.length("first", SafeSide.LONGER);
    Length spacing = bearings.positive("spacing", SafeSide.LONGER);
    if (!bearings.has("first")) {
      bearings.missing("first", "Say how far the first bearing is from the start: first: 4'.");
    }
    if (!bearings.has("spacing")) {
      bearings.missing("spacing", "Say how far apart the bearings are, such as spacing: 8'.");
    }
    if (first == null || spacing == null) {
      atFault = true;
      return new JointPlaces.Anywhere();
    }
    if (covered != null && covered.units() / spacing.units() > MOST_PLACES) {
      fault(
          "bearings",
          "",
          "more than " + MOST_PLACES + " bearings in one line",
          "Is the spacing right?");
    }
    return new JointPlaces.Bearings(first, spacing);
  }

  private Pieces pieces(Length usualStep) {
    Length shortest = lengthOrZero("shortest-piece", SafeSide.LONGER);
    Length atEnd = noted("shortest-at-end", fields.length("shortest-at-end", SafeSide.LONGER));
    Length longest = noted("longest-piece", fields.positive("longest-piece", SafeSide.SHORTER));
    Length step = noted("step", fields.positive("step", SafeSide.LONGER));
    if (longest != null && longest.isShorterThan(shortest)) {
      fault(
          "longest-piece",
          "",
          "shorter than the shortest piece",
          "Correct longest-piece or shortest-piece.");
    }
    return new Pieces(shortest, atEnd, longest, step == null ? usualStep : step);
  }

  private JointCount count() {
    Integer extra = noted("extra-joints", fields.quantity("extra-joints", 0));
    Integer most = noted("most-joints", fields.quantity("most-joints", 0));
    if (fields.has("extra-joints") && fields.has("most-joints")) {
      fault(
          "extra-joints",
          "",
          "most-joints tells already how many joints there may be",
          "Keep one of the two.");
    }
    if (most != null) {
      return new JointCount.AtMost(most);
    }
    return extra == null || extra == 0 ? JointCount.FEWEST : new JointCount.BeyondFewest(extra);
  }

  private ClosingPiece closingPiece() {
    Where where = noted("closing", fields.word("closing", CLOSING));
    Boolean whole = noted("full-sticks", fields.word("full-sticks", Values.YES_OR_NO));
    Length leaveLong = lengthOrZero("leave-long", SafeSide.LONGER);
    return new ClosingPiece(where == null ? Where.END : where, whole != null && whole, leaveLong);
  }

  private @Nullable Expansion expansion(@Nullable Length covered) {
    Length unbroken =
        noted("longest-unbroken", fields.positive("longest-unbroken", SafeSide.SHORTER));
    Length gap = noted("gap", fields.length("gap", SafeSide.LONGER));
    if (fields.has("longest-unbroken") != fields.has("gap")) {
      atFault = true;
      if (fields.has("gap")) {
        fields.missing(
            "longest-unbroken",
            "Say how far apart the gaps may be, such as longest-unbroken: 40', or delete gap.");
      } else {
        fields.missing("gap", "Say how wide the expansion gap is, such as gap: 1/2\".");
      }
    }
    if (unbroken == null || gap == null) {
      return null;
    }
    if (covered != null && covered.units() / unbroken.units() > MOST_PLACES) {
      fault(
          "longest-unbroken",
          "",
          "more than " + MOST_PLACES + " expansion gaps in one line",
          "Is the length right?");
    }
    return new Expansion(unbroken, gap);
  }

  private Length lengthOrZero(String field, SafeSide side) {
    Length length = noted(field, fields.length(field, side));
    return length == null ? Length.ZERO : length;
  }

  private <T> @Nullable T required(String field, @Nullable T value, String remedy) {
    if (!fields.has(field)) {
      atFault = true;
      fields.missing(field, remedy);
    }
    return noted(field, value);
  }

  /** Keeps in mind that a value was not taken. */
  private <T> @Nullable T noted(String field, @Nullable T value) {
    atFault |= value == null && fields.has(field);
    return value;
  }

  private void fault(String field, String value, String wrong, String remedy) {
    atFault = true;
    findings.fault(fields.placeOf(field), fields.way(field), value, wrong, remedy);
  }
}

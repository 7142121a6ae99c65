package lapwright.files.jobs;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import lapwright.files.shop.MaterialFile;
import lapwright.files.source.Fault;
import lapwright.files.source.Fields;
import lapwright.files.source.Findings;
import lapwright.files.source.Node;
import lapwright.files.source.Note;
import lapwright.files.source.Place;
import lapwright.files.source.Values;
import lapwright.measure.Length;
import lapwright.measure.SafeSide;
import lapwright.shop.Material;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Run;
import lapwright.shop.RunNeed;
import lapwright.shop.Saw;
import lapwright.shop.Supply;
import org.jspecify.annotations.Nullable;

/**
 * One run without a folder: the fields of a run, its stock and its saw, each typed as an option and
 * read by the rules of the files. What is wrong is said of options.
 */
public final class SpotRun {
  /** Fields of the stock and the saw, beside those of a run. */
  private static final List<String> CUTTING =
      List.of("stock", "kerf", "end-trim", "hold", "mill-ends", "short-by");

  private static final OptionWords WORDS =
      new OptionWords(Stream.concat(JobFields.RUN.stream(), CUTTING.stream()).distinct().toList());

  private static final Place PLACE = Place.whole("command line");
  private static final String NAME = "run";

  private SpotRun() {}

  /**
   * What was read.
   *
   * @param order null when there are faults
   */
  public record Reading(@Nullable MaterialOrder order, List<Fault> faults, List<Note> notes) {
    public Reading {
      faults = List.copyOf(faults);
      notes = List.copyOf(notes);
    }
  }

  /**
   * Reads one run.
   *
   * @param typed text by field; {@code joints-at} and {@code stock} are lists set apart by commas,
   *     {@code bearings} the first and the spacing
   * @param step lengths of pieces are multiples of it where no step is typed
   */
  public static Reading read(Map<String, String> typed, Length step) {
    Findings findings = new Findings();
    List<Node.Entry> ofRun = new ArrayList<>();
    List<Node.Entry> ofCutting = new ArrayList<>();
    typed.forEach(
        (field, text) -> {
          if (field.equals("bearings") && parts(text).size() != 2) {
            findings.fault(
                PLACE,
                field,
                text,
                "not two lengths",
                "Give the first bearing and the spacing, such as --bearings 0,8ft.");
          } else {
            (CUTTING.contains(field) ? ofCutting : ofRun).add(entry(field, node(field, text)));
          }
        });
    addUnlessTyped(typed, ofRun, "mark", "L");
    addUnlessTyped(typed, ofRun, "qty", "1");
    if (!typed.containsKey("joint")) {
      if (typed.containsKey("lap")) {
        ofRun.add(entry("joint", new Node.Scalar(PLACE, "lap")));
      } else if (typed.containsKey("butt-gap")) {
        ofRun.add(entry("joint", new Node.Scalar(PLACE, "butt")));
      } else {
        findings.fault(
            PLACE,
            "lap",
            "",
            "missing",
            "Give the lap that the drawings say, such as --lap 4in; or --joint butt where pieces"
                + " butt.");
        ofRun.add(entry("joint", new Node.Scalar(PLACE, "butt")));
      }
    }
    Fields run = Fields.of(new Node.Mapping(PLACE, ofRun), "", JobFields.RUN, findings);
    Fields cutting = Fields.of(new Node.Mapping(PLACE, ofCutting), "", CUTTING, findings);
    if (run == null || cutting == null) {
      throw new IllegalStateException("mappings are mappings");
    }
    Run read = RunReader.read(run, NAME, step, findings);
    MaterialOrder order = order(cutting, findings);
    return new Reading(
        read == null || order == null || !findings.isSound()
            ? null
            : order.withRuns(List.of(new RunNeed(NAME, null, 1, read))),
        findings.faults().stream().map(WORDS::fault).toList(),
        findings.notes());
  }

  /** What is said of a run in a file, as it is said of options. */
  public static String inOptions(String text) {
    return WORDS.advice(text);
  }

  private static void addUnlessTyped(
      Map<String, String> typed, List<Node.Entry> entries, String field, String text) {
    if (!typed.containsKey(field)) {
      entries.add(entry(field, new Node.Scalar(PLACE, text)));
    }
  }

  private static Node.Entry entry(String field, Node value) {
    return new Node.Entry(PLACE, field, value);
  }

  private static Node node(String field, String text) {
    if (field.equals("joints-at") || field.equals("stock")) {
      return new Node.Listing(
          PLACE, parts(text).stream().map(part -> (Node) new Node.Scalar(PLACE, part)).toList());
    }
    if (field.equals("bearings")) {
      List<String> parts = parts(text);
      List<Node.Entry> entries = new ArrayList<>();
      for (int i = 0; i < parts.size(); i++) {
        entries.add(entry(i == 0 ? "first" : "spacing", new Node.Scalar(PLACE, parts.get(i))));
      }
      return new Node.Mapping(PLACE, entries);
    }
    return new Node.Scalar(PLACE, text);
  }

  private static List<String> parts(String text) {
    List<String> parts = new ArrayList<>();
    for (String part : text.split(",", -1)) {
      parts.add(part.strip());
    }
    return parts;
  }

  private static @Nullable MaterialOrder order(Fields fields, Findings findings) {
    Length kerf = orZero(fields.length("kerf", SafeSide.LONGER));
    Length endTrim = orZero(fields.length("end-trim", SafeSide.LONGER));
    Length hold = orZero(fields.length("hold", SafeSide.LONGER));
    Boolean good = fields.word("mill-ends", MaterialFile.MILL_ENDS);
    Length shortBy = orZero(fields.length("short-by", SafeSide.LONGER));
    if (!fields.has("stock")) {
      fields.missing("stock", "Give the length of the sticks, such as --stock 10ft.");
      return null;
    }
    List<Supply> supplies = new ArrayList<>();
    Values values = new Values(findings);
    List<Node> items = fields.list("stock");
    for (Node item : items == null ? List.<Node>of() : items) {
      Length length =
          values.positive(PLACE, "stock", ((Node.Scalar) item).text(), SafeSide.SHORTER);
      if (length == null) {
        continue;
      }
      if (supplies.stream().anyMatch(supply -> supply.length().equals(length))) {
        findings.fault(
            PLACE, "stock", ((Node.Scalar) item).text(), "given twice", "Give each length once.");
      } else if (!length.isLongerThan(shortBy)) {
        findings.fault(
            PLACE,
            "short-by",
            "",
            "sticks can come short by as much as they are long",
            "Correct --short-by or --stock.");
      } else {
        supplies.add(new Supply.Offer("", length, null, 1, Integer.MAX_VALUE, "", null, null));
      }
    }
    if (!endTrim.isZero() && endTrim.isShorterThan(kerf)) {
      findings.fault(
          PLACE,
          "end-trim",
          "",
          "less than one cut takes",
          "Write an end trim that holds the kerf, or 0 where ends are not trimmed.");
    }
    if (!findings.isSound()) {
      return null;
    }
    Saw saw = new Saw("saw", kerf, endTrim, hold, null);
    return new MaterialOrder(
        new Material(NAME, NAME, saw.id(), good != null && good, shortBy, Length.ZERO, null),
        saw,
        true,
        supplies,
        List.of(),
        List.of());
  }

  private static Length orZero(@Nullable Length length) {
    return length == null ? Length.ZERO : length;
  }
}

package lapwright.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import picocli.CommandLine.Option;

/**
 * A run, its stock and its saw on the command line, first what is always typed; the names are those
 * of the files.
 */
final class RunOptions {
  private final Map<String, String> typed = new LinkedHashMap<>();

  /** Text by field. */
  Map<String, String> typed() {
    return typed;
  }

  @Option(
      names = "--length",
      order = 1,
      paramLabel = "LENGTH",
      description = "The length that is covered, such as 40ft or 36ft-8in.")
  void length(String text) {
    typed.put("length", text);
  }

  @Option(
      names = "--qty",
      order = 4,
      paramLabel = "NUMBER",
      description = "How many lines of it (default: 1).")
  void qty(String text) {
    typed.put("qty", text);
  }

  @Option(
      names = "--mark",
      order = 28,
      paramLabel = "MARK",
      description = "What its pieces are named after (default: L).")
  void mark(String text) {
    typed.put("mark", text);
  }

  @Option(
      names = "--stock",
      order = 2,
      paramLabel = "LENGTH,..",
      description = "Lengths of the sticks, such as 10ft or 10ft,12ft-2in.")
  void stock(String text) {
    typed.put("stock", text);
  }

  @Option(
      names = "--lap",
      order = 3,
      paramLabel = "LENGTH",
      description = "Pieces overlap by this; as the drawings say, there is no default.")
  void lap(String text) {
    typed.put("lap", text);
  }

  @Option(
      names = "--joint",
      order = 5,
      paramLabel = "butt|lap",
      description = "How pieces meet; may be left out where --lap or --butt-gap is given.")
  void joint(String text) {
    typed.put("joint", text);
  }

  @Option(
      names = "--butt-gap",
      order = 6,
      paramLabel = "LENGTH",
      description = "The greatest gap that the drawings allow where pieces butt.")
  void buttGap(String text) {
    typed.put("butt-gap", text);
  }

  @Option(
      names = "--joints-at",
      order = 7,
      paramLabel = "LENGTH,..",
      description = "Where joints may stand, from the start (default: anywhere).")
  void jointsAt(String text) {
    typed.put("joints-at", text);
  }

  @Option(
      names = "--bearings",
      order = 8,
      paramLabel = "FIRST,SPACING",
      description =
          "Joints stand on bearings only: the first this far from the start, then one every spacing, such as 0,8ft.")
  void bearings(String text) {
    typed.put("bearings", text);
  }

  @Option(
      names = "--shortest-piece",
      order = 9,
      paramLabel = "LENGTH",
      description = "No piece is shorter.")
  void shortestPiece(String text) {
    typed.put("shortest-piece", text);
  }

  @Option(
      names = "--shortest-at-end",
      order = 10,
      paramLabel = "LENGTH",
      description = "The same for the first and the last piece, instead of --shortest-piece.")
  void shortestAtEnd(String text) {
    typed.put("shortest-at-end", text);
  }

  @Option(
      names = "--longest-piece",
      order = 11,
      paramLabel = "LENGTH",
      description = "No piece is longer.")
  void longestPiece(String text) {
    typed.put("longest-piece", text);
  }

  @Option(
      names = "--step",
      order = 22,
      paramLabel = "LENGTH",
      description =
          "Pieces come in multiples of this, but for whole sticks and closing pieces (default: 1/16 in, or 1 mm).")
  void step(String text) {
    typed.put("step", text);
  }

  @Option(
      names = "--closing",
      order = 15,
      paramLabel = "end|start|either",
      description = "Where the piece lies that is laid last (default: end).")
  void closing(String text) {
    typed.put("closing", text);
  }

  @Option(
      names = "--full-sticks",
      order = 14,
      description = "All pieces but the closing one are whole sticks.")
  void fullSticks(boolean wanted) {
    if (wanted) {
      typed.put("full-sticks", "yes");
    }
  }

  @Option(
      names = "--leave-long",
      order = 16,
      paramLabel = "LENGTH",
      description = "That piece goes out this much too long and is cut on the building.")
  void leaveLong(String text) {
    typed.put("leave-long", text);
  }

  @Option(
      names = "--extra-joints",
      order = 12,
      paramLabel = "NUMBER",
      description = "So many joints more than the fewest (default: 0).")
  void extraJoints(String text) {
    typed.put("extra-joints", text);
  }

  @Option(
      names = "--most-joints",
      order = 13,
      paramLabel = "NUMBER",
      description = "So many joints a line may have, outright.")
  void mostJoints(String text) {
    typed.put("most-joints", text);
  }

  @Option(
      names = "--stagger",
      order = 17,
      paramLabel = "LENGTH",
      description = "Joints of neighbouring lines are at least this far apart.")
  void stagger(String text) {
    typed.put("stagger", text);
  }

  @Option(
      names = "--longest-unbroken",
      order = 18,
      paramLabel = "LENGTH",
      description = "An expansion gap at least this often; with --gap.")
  void longestUnbroken(String text) {
    typed.put("longest-unbroken", text);
  }

  @Option(
      names = "--gap",
      order = 19,
      paramLabel = "LENGTH",
      description = "How wide an expansion gap is.")
  void gap(String text) {
    typed.put("gap", text);
  }

  @Option(
      names = "--add-at-start",
      order = 20,
      paramLabel = "LENGTH",
      description = "What the first piece is longer: corner lap, return, hem.")
  void addAtStart(String text) {
    typed.put("add-at-start", text);
  }

  @Option(
      names = "--add-at-end",
      order = 21,
      paramLabel = "LENGTH",
      description = "The same for the last piece.")
  void addAtEnd(String text) {
    typed.put("add-at-end", text);
  }

  @Option(
      names = "--kerf",
      order = 23,
      paramLabel = "LENGTH",
      description = "What a cut takes (default: 0).")
  void kerf(String text) {
    typed.put("kerf", text);
  }

  @Option(
      names = "--end-trim",
      order = 24,
      paramLabel = "LENGTH",
      description = "What is cut off a bad mill end, its kerf included (default: 0).")
  void endTrim(String text) {
    typed.put("end-trim", text);
  }

  @Option(
      names = "--hold",
      order = 26,
      paramLabel = "LENGTH",
      description = "The least that the vise holds at the last cut (default: 0).")
  void hold(String text) {
    typed.put("hold", text);
  }

  @Option(
      names = "--mill-ends",
      order = 25,
      paramLabel = "good|bad",
      description = "good: mill ends need no trim.")
  void millEnds(String text) {
    typed.put("mill-ends", text);
  }

  @Option(
      names = "--short-by",
      order = 27,
      paramLabel = "LENGTH",
      description = "By how much a stick can come short (default: 0).")
  void shortBy(String text) {
    typed.put("short-by", text);
  }
}

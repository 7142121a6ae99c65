package lapwright.files.jobs;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lapwright.files.source.Findings;
import lapwright.files.source.Place;
import lapwright.files.source.Values;
import lapwright.measure.Length;
import lapwright.measure.LengthText;
import lapwright.measure.SafeSide;
import lapwright.shop.Piece;
import org.jspecify.annotations.Nullable;

/**
 * A piece as it is written on paper: {@code 8 @ 9'-6" P1 post}, which is quantity, length, mark or
 * {@code -}, then words.
 */
final class Shorthand {
  private static final String EXAMPLE = "Write quantity @ length mark words: 8 @ 9'-6\" P1 post.";
  private static final Pattern COUNT = Pattern.compile("\\s*([^@]*?)\\s*@\\s*(.*)", Pattern.DOTALL);

  private Shorthand() {}

  /** Reads a line; null, and a fault, when it is none. */
  static @Nullable Piece read(
      Place place, String way, String text, String material, Findings findings) {
    Values values = new Values(findings);
    if (text.indexOf('@') != text.lastIndexOf('@')) {
      findings.fault(
          place,
          way,
          text,
          "a second @: two lines were taken for one",
          "Begin each line with a dash, and put words that contain @ in a field of their own.");
      return null;
    }
    Matcher matcher = COUNT.matcher(text);
    if (!matcher.matches()) {
      findings.fault(place, way, text, "not a piece", EXAMPLE);
      return null;
    }
    Integer qty = values.quantity(place, way, matcher.group(1), 1);
    String rest = matcher.group(2);
    LengthText.Prefix prefix = LengthText.readPrefix(rest, 0, SafeSide.LONGER);
    Length length = values.taken(place, way, text, prefix.reading());
    if (qty == null || length == null) {
      return null;
    }
    if (length.isZero()) {
      findings.fault(place, way, text, "a length of 0", "Give a length above 0.");
      return null;
    }
    String[] words = rest.substring(prefix.end()).strip().split("\\s+", 2);
    String mark = words[0].equals("-") ? "" : values.words(place, way, words[0]);
    String purpose = words.length < 2 ? "" : values.words(place, way, words[1]);
    if (mark == null || purpose == null) {
      return null;
    }
    return new Piece(material, mark, length, qty, purpose);
  }
}

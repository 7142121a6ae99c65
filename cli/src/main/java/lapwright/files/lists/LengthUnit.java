package lapwright.files.lists;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The unit of a bare number, told by a header or by a column of its own. */
public enum LengthUnit {
  INCH("in", "\"", "in", "inch", "inches", "\"", "''", "\u2033"),
  FOOT("ft", "'", "ft", "feet", "foot", "'", "\u2032"),
  MILLIMETRE("mm", " mm", "mm", "millimetre", "millimetres", "millimeters"),
  METRE("m", " m", "m", "metre", "metres", "meter", "meters");

  private final String word;
  private final String sign;
  private final String spellings;

  LengthUnit(String word, String sign, String... spellings) {
    this.word = word;
    this.sign = sign;
    this.spellings = String.join(" ", spellings);
  }

  /** As people type it. */
  public String word() {
    return word;
  }

  /** What follows a number to make it a length. */
  String sign() {
    return sign;
  }

  /** Null when the text is no unit of length. */
  public static @Nullable LengthUnit of(String text) {
    String spelling = text.strip().toLowerCase(Locale.ROOT).replaceAll("\\.$", "");
    for (LengthUnit unit : values()) {
      if (List.of(unit.spellings.split(" ")).contains(spelling)) {
        return unit;
      }
    }
    return null;
  }
}

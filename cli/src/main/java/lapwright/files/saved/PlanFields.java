package lapwright.files.saved;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Pattern;
import lapwright.files.source.Fields;
import lapwright.files.source.Findings;
import lapwright.files.source.Node;
import lapwright.measure.Length;
import lapwright.measure.Money;
import org.jspecify.annotations.Nullable;

/**
 * The fields of one object in a saved plan. What is missing or wrong is reported and thrown as
 * {@link Damaged}, which gives up the object around it and no more.
 */
final class PlanFields {
  private static final Pattern DECIMAL = Pattern.compile("-?\\d{1,18}(\\.\\d{1,10})?");
  private static final String REMEDY = "Plan again and save: lapwright order FOLDER --save.";

  private final Fields fields;
  private final Findings findings;

  private PlanFields(Fields fields, Findings findings) {
    this.fields = fields;
    this.findings = findings;
  }

  /** Something was missing or wrong and has been reported. */
  static final class Damaged extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Damaged() {
      super("reported as a fault", null, false, false);
    }
  }

  static PlanFields of(Node node, String path, Findings findings) {
    Fields fields = Fields.named(node, path, findings);
    if (fields == null) {
      throw new Damaged();
    }
    return new PlanFields(fields, findings);
  }

  boolean has(String field) {
    return fields.has(field);
  }

  Damaged damaged(String field, String value, String wrong) {
    findings.fault(fields.placeOf(field), fields.way(field), value, wrong, REMEDY);
    return new Damaged();
  }

  private String text(String field) {
    Node.Entry entry = fields.entry(field);
    if (entry == null) {
      throw damaged(field, "", "missing");
    }
    if (entry.value() instanceof Node.Scalar scalar) {
      return scalar.text();
    }
    throw damaged(field, "", "not one value");
  }

  String words(String field) {
    return text(field);
  }

  String wordsIfAny(String field) {
    return has(field) ? text(field) : "";
  }

  <T> T word(String field, Map<String, T> words) {
    T value = words.get(text(field));
    if (value == null) {
      throw damaged(field, text(field), "not one of " + String.join(", ", words.keySet()));
    }
    return value;
  }

  boolean truth(String field) {
    return word(field, Map.of("true", true, "false", false));
  }

  @Nullable LocalDate day(String field) {
    if (!has(field)) {
      return null;
    }
    LocalDate day = fields.day(field);
    if (day == null) {
      throw new Damaged();
    }
    return day;
  }

  BigDecimal decimal(String field) {
    String text = text(field);
    if (!DECIMAL.matcher(text).matches()) {
      throw damaged(field, text, "not a plain number");
    }
    return new BigDecimal(text);
  }

  long number(String field) {
    return scaled(field, BigDecimal.ONE);
  }

  int count(String field) {
    long number = number(field);
    if (number < 0 || number > Integer.MAX_VALUE) {
      throw damaged(field, Long.toString(number), "out of range");
    }
    return (int) number;
  }

  Length mm(String field) {
    return Length.ofUnits(scaled(field, BigDecimal.valueOf(Length.UNITS_PER_MM)));
  }

  @Nullable Length mmIfAny(String field) {
    return has(field) ? mm(field) : null;
  }

  Money money(String field) {
    return new Money(scaled(field, BigDecimal.valueOf(Money.PER_UNIT)));
  }

  @Nullable Money moneyIfAny(String field) {
    return has(field) ? money(field) : null;
  }

  /** A decimal number times {@code factor}, which must be whole. */
  private long scaled(String field, BigDecimal factor) {
    BigDecimal value = decimal(field).multiply(factor);
    try {
      return value.longValueExact();
    } catch (ArithmeticException e) {
      throw damaged(field, text(field), "too large, or finer than the unit");
    }
  }

  /** Reads each item of a list of objects; items that are damaged damage the list. */
  <T> List<T> list(String field, Function<PlanFields, T> reader) {
    List<Node> items = has(field) ? fields.list(field) : null;
    if (items == null) {
      throw has(field) ? new Damaged() : damaged(field, "", "missing");
    }
    List<T> values = new ArrayList<>();
    boolean damaged = false;
    int n = 0;
    for (Node item : items) {
      try {
        values.add(reader.apply(of(item, fields.way(field) + " > " + ++n, findings)));
      } catch (Damaged reported) {
        damaged = true;
      }
    }
    if (damaged) {
      throw new Damaged();
    }
    return values;
  }

  List<String> wordList(String field) {
    List<Node> items = has(field) ? fields.list(field) : null;
    if (items == null) {
      throw has(field) ? new Damaged() : damaged(field, "", "missing");
    }
    List<String> words = new ArrayList<>();
    for (Node item : items) {
      if (!(item instanceof Node.Scalar scalar)) {
        throw damaged(field, "", "not a list of words");
      }
      words.add(scalar.text());
    }
    return words;
  }

  /** Each of a list is one of a few words. */
  <T> List<T> words(String field, Map<String, T> known) {
    List<T> values = new ArrayList<>();
    for (String word : wordList(field)) {
      T value = known.get(word);
      if (value == null) {
        throw damaged(field, word, "not one of " + String.join(", ", known.keySet()));
      }
      values.add(value);
    }
    return values;
  }

  PlanFields object(String field) {
    Node.Entry entry = fields.entry(field);
    if (entry == null) {
      throw damaged(field, "", "missing");
    }
    return of(entry.value(), fields.way(field), findings);
  }

  List<Node.Entry> entries() {
    return fields.entries();
  }
}

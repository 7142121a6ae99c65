package lapwright.files.saved;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Collection;
import java.util.function.Consumer;
import lapwright.measure.Length;
import lapwright.measure.LengthStyle;
import lapwright.measure.Money;
import org.jspecify.annotations.Nullable;

/** Writes JSON with our kinds of values: exact numbers, absent fields for what is not there. */
public final class Json {
  private final StringWriter text = new StringWriter();
  private final JsonGenerator out;

  public Json() {
    try {
      out = new JsonFactory().createGenerator(text);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    DefaultIndenter lines = new DefaultIndenter("  ", "\n");
    DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
    printer.indentObjectsWith(lines);
    printer.indentArraysWith(lines);
    out.setPrettyPrinter(printer);
  }

  private interface Step {
    void write() throws IOException;
  }

  private static void run(Step step) {
    try {
      step.write();
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }

  /** The whole text, ended by a line end. */
  public String text(Runnable content) {
    run(out::writeStartObject);
    content.run();
    run(out::writeEndObject);
    run(out::close);
    return text + "\n";
  }

  /** The same, with what writes it handed in. */
  public String text(Consumer<Json> content) {
    return text(() -> content.accept(this));
  }

  public void words(String field, String value) {
    run(() -> out.writeStringField(field, value));
  }

  /** Leaves the field out when there is nothing to say. */
  public void wordsIfAny(String field, String value) {
    if (!value.isEmpty()) {
      words(field, value);
    }
  }

  public void day(String field, @Nullable LocalDate day) {
    if (day != null) {
      words(field, day.toString());
    }
  }

  public void number(String field, long value) {
    run(() -> out.writeNumberField(field, value));
  }

  public void number(String field, BigDecimal value) {
    run(
        () -> {
          out.writeFieldName(field);
          out.writeNumber(value.toPlainString());
        });
  }

  public void truth(String field, boolean value) {
    run(() -> out.writeBooleanField(field, value));
  }

  public void money(String field, @Nullable Money value) {
    if (value != null) {
      BigDecimal exact = BigDecimal.valueOf(value.tenThousandths(), 4).stripTrailingZeros();
      number(field, exact.setScale(Math.max(2, exact.scale())));
    }
  }

  /** Exact millimetres. */
  public void mm(String field, @Nullable Length value) {
    if (value != null) {
      number(field, LengthStyle.exactMm(value));
    }
  }

  /** Two fields: the length as the shop reads it, and in exact millimetres. */
  public void length(String field, Length value, LengthStyle style) {
    words(field, style.exact(value));
    mm(field + "Mm", value);
  }

  public void object(String field, Runnable content) {
    run(() -> out.writeObjectFieldStart(field));
    content.run();
    run(out::writeEndObject);
  }

  public <T> void list(String field, Collection<T> items, Consumer<T> each) {
    run(() -> out.writeArrayFieldStart(field));
    for (T item : items) {
      run(out::writeStartObject);
      each.accept(item);
      run(out::writeEndObject);
    }
    run(out::writeEndArray);
  }

  public void wordList(String field, Collection<String> items) {
    run(() -> out.writeArrayFieldStart(field));
    for (String item : items) {
      run(() -> out.writeString(item));
    }
    run(out::writeEndArray);
  }
}

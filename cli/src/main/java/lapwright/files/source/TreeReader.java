package lapwright.files.source;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLParser;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.error.MarkedYAMLException;

/**
 * Reads YAML and JSON into a tree, token by token, so that no number or word is changed on the way.
 * Anchors, tags and second documents, which would be dropped silently, are faults.
 */
public final class TreeReader {
  private static final JsonFactory JSON = new JsonFactory();
  private static final JsonFactory YAML = yamlFactory();

  private final FileText file;
  private final JsonParser parser;
  private final Findings findings;
  private final List<String> lines;
  private final List<String> texts = new ArrayList<>();

  private TreeReader(FileText file, List<String> lines, JsonParser parser, Findings findings) {
    this.file = file;
    this.lines = lines;
    this.parser = parser;
    this.findings = findings;
  }

  /** The tree of the file; null when there is none, which is a fault then. */
  public static @Nullable Node read(FileText file, Findings findings) {
    return read(file, file.name().toLowerCase(Locale.ROOT).endsWith(".json"), findings);
  }

  /** The tree of a file that is JSON whatever its name; null when there is none. */
  public static @Nullable Node readJson(FileText file, Findings findings) {
    return read(file, true, findings);
  }

  private static @Nullable Node read(FileText file, boolean json, Findings findings) {
    List<String> lines = file.lines();
    if (!json && YamlAccidents.reportTabs(file.name(), lines, findings)) {
      return null;
    }
    try (JsonParser parser = (json ? JSON : YAML).createParser(file.text())) {
      TreeReader reader = new TreeReader(file, lines, parser, findings);
      Node root = reader.root();
      if (root != null && !json) {
        YamlAccidents.reportComments(file.name(), lines, reader.texts, findings);
      }
      return root;
    } catch (JsonProcessingException e) {
      Place place = placeOf(e, file.name());
      findings.fault(
          json
              ? new Fault(
                  place,
                  "",
                  "",
                  "not JSON: " + firstLine(e.getOriginalMessage()),
                  "Look for a missing or extra comma, quote or brace there or just before.")
              : YamlAccidents.explained(place, lines, problem(e)));
      return null;
    } catch (IOException e) {
      throw new IllegalStateException("a text in memory could not be read", e);
    }
  }

  private static YAMLFactory yamlFactory() {
    LoaderOptions options = new LoaderOptions();
    options.setCodePointLimit(Integer.MAX_VALUE);
    return YAMLFactory.builder().loaderOptions(options).build();
  }

  private @Nullable Node root() throws IOException {
    if (parser.nextToken() == null) {
      findings.fault(
          Place.whole(file.name()), "", "", "the file is empty", "Fill it in, or delete it.");
      return null;
    }
    Node root = value();
    if (parser.nextToken() != null) {
      findings.fault(
          place(),
          "",
          "",
          "a second document, or text after the end",
          "Keep one document in a file; look for a line of --- or a stray brace.");
      return null;
    }
    return root;
  }

  private Node value() throws IOException {
    JsonToken token = Objects.requireNonNull(parser.currentToken());
    Place place = place();
    refuseAnchorsAndTags(place);
    if (token == JsonToken.START_ARRAY) {
      List<Node> items = new ArrayList<>();
      while (parser.nextToken() != JsonToken.END_ARRAY) {
        items.add(value());
      }
      return new Node.Listing(place, items);
    }
    if (token == JsonToken.START_OBJECT) {
      List<Node.Entry> entries = new ArrayList<>();
      while (parser.nextToken() != JsonToken.END_OBJECT) {
        Place keyPlace = place();
        String key = parser.currentName();
        texts.add(key);
        if (key.equals("<<")) {
          refuse(keyPlace, key, "merge keys are not taken");
        }
        refuseAnchorsAndTags(keyPlace);
        parser.nextToken();
        entries.add(new Node.Entry(keyPlace, key, value()));
      }
      return new Node.Mapping(place, entries);
    }
    String text = token == JsonToken.VALUE_NULL ? nullText() : parser.getText();
    texts.add(text);
    return new Node.Scalar(place, text.strip());
  }

  /** What was typed for nothing: {@code ~} and {@code null} are words that someone typed. */
  private String nullText() throws IOException {
    String text = parser instanceof YAMLParser ? parser.getText() : "";
    return text == null ? "" : text;
  }

  private void refuseAnchorsAndTags(Place place) throws IOException {
    if (parser instanceof YAMLParser yaml) {
      if (yaml.isCurrentAlias()) {
        refuse(place, "*" + parser.getText(), "references to anchors are not taken");
      } else if (yaml.getObjectId() != null || typedAt(place) == '&') {
        refuse(place, "&", "anchors are not taken");
      }
      if (yaml.getTypeId() != null) {
        refuse(place, "!" + yaml.getTypeId(), "tags are not taken");
      }
    }
  }

  /** The parser does not tell the anchors of all scalars; the typed text does. */
  private char typedAt(Place place) {
    String line =
        place.line() >= 1 && place.line() <= lines.size() ? lines.get(place.line() - 1) : "";
    return place.column() >= 1 && place.column() <= line.length()
        ? line.charAt(place.column() - 1)
        : ' ';
  }

  private void refuse(Place place, String value, String wrong) {
    findings.fault(
        place, "", value, wrong, "Write the values out; put a text that begins so in quotes.");
  }

  private Place place() {
    JsonLocation at = parser.currentTokenLocation();
    return new Place(file.name(), Math.max(0, at.getLineNr()), Math.max(0, at.getColumnNr()));
  }

  private static Place placeOf(JsonProcessingException e, String file) {
    if (e.getCause() instanceof MarkedYAMLException marked && marked.getProblemMark() != null) {
      Mark mark = marked.getProblemMark();
      return new Place(file, mark.getLine() + 1, mark.getColumn() + 1);
    }
    JsonLocation at = e.getLocation();
    return at == null
        ? Place.whole(file)
        : new Place(file, Math.max(0, at.getLineNr()), Math.max(0, at.getColumnNr()));
  }

  private static String problem(JsonProcessingException e) {
    return e.getCause() instanceof MarkedYAMLException marked && marked.getProblem() != null
        ? firstLine(marked.getProblem())
        : firstLine(e.getOriginalMessage());
  }

  private static String firstLine(@Nullable String message) {
    String text = message == null ? "cannot be read" : message;
    int end = text.indexOf('\n');
    return (end < 0 ? text : text.substring(0, end)).strip();
  }
}

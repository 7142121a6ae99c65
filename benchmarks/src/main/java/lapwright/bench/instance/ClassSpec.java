package lapwright.bench.instance;

import java.util.Collections;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A class of generated instances with its parameters, written {@code uniform:n=120,c=150}.
 *
 * @param name of the class
 * @param parameters those that were given; the class knows the values of the others
 */
public record ClassSpec(String name, SortedMap<String, Long> parameters) {
  public ClassSpec {
    Objects.requireNonNull(name);
    parameters = Collections.unmodifiableSortedMap(new TreeMap<>(parameters));
  }

  /**
   * Reads {@code NAME} or {@code NAME:KEY=NUMBER,KEY=NUMBER}.
   *
   * @throws IllegalArgumentException with a message for the user
   */
  public static ClassSpec parse(String text) {
    int colon = text.indexOf(':');
    if (colon < 0) {
      return new ClassSpec(text, new TreeMap<>());
    }
    SortedMap<String, Long> parameters = new TreeMap<>();
    for (String part : text.substring(colon + 1).split(",", -1)) {
      int equals = part.indexOf('=');
      if (equals < 1 || !part.substring(equals + 1).matches("[0-9]{1,15}")) {
        throw new IllegalArgumentException(
            text + ": '" + part + "' is not NAME=NUMBER, as in uniform:n=120,c=150");
      }
      if (parameters.put(part.substring(0, equals), Long.valueOf(part.substring(equals + 1)))
          != null) {
        throw new IllegalArgumentException(text + ": '" + part.substring(0, equals) + "' twice");
      }
    }
    return new ClassSpec(text.substring(0, colon), parameters);
  }

  /** The parameter's value, or {@code otherwise} when it was not given. */
  public long get(String key, long otherwise) {
    return parameters.getOrDefault(key, otherwise);
  }

  public int getInt(String key, int otherwise) {
    return Math.toIntExact(get(key, otherwise));
  }

  /** A name for an instance of it that serves as a file's name too. */
  public String instanceName(long seed, int index) {
    StringBuilder text = new StringBuilder(name);
    for (Map.Entry<String, Long> parameter : parameters.entrySet()) {
      text.append('-').append(parameter.getKey()).append(parameter.getValue());
    }
    return text.append("-seed").append(Math.addExact(seed, index)).toString();
  }

  @Override
  public String toString() {
    StringBuilder text = new StringBuilder(name);
    char before = ':';
    for (Map.Entry<String, Long> parameter : parameters.entrySet()) {
      text.append(before).append(parameter.getKey()).append('=').append(parameter.getValue());
      before = ',';
    }
    return text.toString();
  }
}

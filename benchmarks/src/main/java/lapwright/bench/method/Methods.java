package lapwright.bench.method;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** All methods, by name. */
public final class Methods {
  private static final Map<String, Method> BY_NAME = new LinkedHashMap<>();

  static {
    register(new LapwrightSticks());
    register(new LapwrightPlanner());
    register(new FirstFit());
    register(new AssignmentModel("model-scip", "SCIP"));
    register(new AssignmentModel("model-cbc", "CBC"));
    register(new AssignmentCpSat());
    register(new ArcFlow());
  }

  private Methods() {}

  private static void register(Method method) {
    BY_NAME.put(method.name(), method);
  }

  /**
   * The method of a name.
   *
   * @throws IllegalArgumentException with a message for the user
   */
  public static Method named(String name) {
    Method method = BY_NAME.get(name);
    if (method == null) {
      throw new IllegalArgumentException(
          "no method is called '" + name + "'; there are " + String.join(", ", BY_NAME.keySet()));
    }
    return method;
  }

  /** One line a method, for the help. */
  public static List<String> descriptions() {
    return BY_NAME.values().stream()
        .map(method -> method.name() + ": " + method.description())
        .toList();
  }
}

package lapwright.bench.instance;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** All classes of generated instances, by name. */
public final class InstanceClasses {
  private static final Map<String, InstanceClass> BY_NAME = new LinkedHashMap<>();

  static {
    register(
        new RandomSizes(
            "capacity 150, sizes 20 to 100",
            List.of("uniform:n=120", "uniform:n=250", "uniform:n=500", "uniform:n=1000"),
            "uniform:n=120,c=150,from=20,to=100"));
    register(new Triplets());
    register(new ZeroWaste());
    register(new OddCore());
    register(new RandomGrid());
    register(new GauWaescher());
    register(
        new RandomSizes(
            "capacity 1000, a narrow range of sizes, 100 to 120 pieces",
            List.of("schwerin-like:from=150,to=200", "schwerin-like:from=200,to=250"),
            "schwerin-like:n=100,n-most=120,c=1000,from=150,to=200"));
    register(
        new RandomSizes(
            "160 to 200 distinct pieces of 1 to 800 in 1000",
            List.of("hard-distinct"),
            "hard-distinct:n=160,n-most=200,c=1000,from=1,to=800,distinct=1"));
    register(
        new RandomSizes(
            "capacity 100,000, sizes 20,000 to 35,000",
            List.of("fine-grained"),
            "fine-grained:n=200,c=100000,from=20000,to=35000"));
    register(new SeveralLengths());
    register(new WeekMaterial());
    register(new ShopMaterial());
    register(new DemandMix());
    register(new MixedUnits(false));
    register(new MixedUnits(true));
  }

  private InstanceClasses() {}

  private static void register(InstanceClass instanceClass) {
    BY_NAME.put(instanceClass.name(), instanceClass);
  }

  /**
   * What a word of the command line stands for: one specification, or the usual ones of a class
   * that is named alone.
   *
   * @throws IllegalArgumentException with a message for the user
   */
  public static List<ClassSpec> resolve(String text) {
    ClassSpec spec = ClassSpec.parse(text);
    InstanceClass instanceClass = named(spec);
    if (spec.parameters().isEmpty()) {
      return instanceClass.usual().stream().map(ClassSpec::parse).toList();
    }
    for (String key : spec.parameters().keySet()) {
      if (!instanceClass.parameters().contains(key)) {
        throw new IllegalArgumentException(
            text
                + ": '"
                + key
                + "' is no parameter of it; there are "
                + String.join(", ", instanceClass.parameters()));
      }
    }
    return List.of(spec);
  }

  /**
   * Instances 0 to {@code count} - 1 of a seed.
   *
   * @throws IllegalArgumentException with a message for the user, if the parameters fit nothing
   */
  public static List<Instance> generate(ClassSpec spec, long seed, int count) {
    InstanceClass instanceClass = named(spec);
    List<Instance> instances = new ArrayList<>();
    for (int index = 0; index < count; index++) {
      instances.add(instanceClass.generate(spec, seed, index));
    }
    return instances;
  }

  /** One line a class, for the help. */
  public static List<String> descriptions() {
    return BY_NAME.values().stream()
        .map(
            known ->
                known.name()
                    + " ("
                    + String.join(", ", known.parameters())
                    + "): "
                    + known.description())
        .toList();
  }

  private static InstanceClass named(ClassSpec spec) {
    InstanceClass instanceClass = BY_NAME.get(spec.name());
    if (instanceClass == null) {
      throw new IllegalArgumentException(
          "no class is called '"
              + spec.name()
              + "'; there are "
              + String.join(", ", BY_NAME.keySet()));
    }
    return instanceClass;
  }
}

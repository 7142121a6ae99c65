package lapwright.bench.instance;

import java.util.List;

/**
 * A class of generated instances. The same specification, seed and index give the same instance, on
 * any machine.
 */
interface InstanceClass {
  String name();

  /** One line for the help. */
  String description();

  /** The parameters that a specification may give. */
  List<String> parameters();

  /** What the bare name of the class stands for. */
  List<String> usual();

  /**
   * Makes one instance.
   *
   * @param index from 0; instance {@code index} of seed s is instance 0 of seed s + index, unless
   *     the class says otherwise
   * @throws IllegalArgumentException if the parameters fit no instance
   */
  Instance generate(ClassSpec spec, long seed, int index);
}

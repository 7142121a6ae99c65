package lapwright.bench.instance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import lapwright.problem.StickProblem.Item;
import lapwright.problem.StickProblem.Stock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class InstanceClassesTest {
  static Stream<String> everyClass() {
    return Stream.of(
        "uniform:n=120",
        "triplets:n=60",
        "zero-waste:n=202,c=2500",
        "odd-core:n=60,c=2500",
        "random-grid",
        "gau-waescher:m=20",
        "schwerin-like:from=150,to=200",
        "hard-distinct",
        "fine-grained:n=50",
        "several-lengths",
        "week:jobs=10",
        "shop:pack=1",
        "demand-mix:types=20,pieces=100",
        "sixteenths:types=20",
        "mixed-units:types=20");
  }

  @ParameterizedTest
  @MethodSource("everyClass")
  void makesTheSameInstanceAgain(String text) {
    List<Instance> first = InstanceClasses.generate(ClassSpec.parse(text), 7, 3);

    assertEquals(first, InstanceClasses.generate(ClassSpec.parse(text), 7, 3));
    assertNotEquals(first.get(0).problem(), first.get(1).problem());
  }

  @ParameterizedTest
  @MethodSource("everyClass")
  void makesInstancesThatCanBeCut(String text) {
    for (Instance instance : InstanceClasses.generate(ClassSpec.parse(text), 7, 3)) {
      long longest = longest(instance);
      assertTrue(instance.problem().items().stream().allMatch(item -> item.size() <= longest));
    }
  }

  @ParameterizedTest
  @MethodSource("everyClass")
  void readsBackWhatItWrote(String text, @TempDir Path folder) throws IOException {
    List<Instance> made = InstanceClasses.generate(ClassSpec.parse(text), 3, 2);
    List<Path> written = InstanceWriter.write(made, folder);

    InstanceReader reader = new InstanceReader();
    List<Instance> read = written.stream().flatMap(path -> reader.read(path).stream()).toList();

    assertEquals(List.of(), reader.faults());
    assertEquals(2, read.size());
    for (int i = 0; i < 2; i++) {
      assertEquals(made.get(i).name(), read.get(i).name());
      assertEquals(made.get(i).known(), read.get(i).known());
      assertEquals(made.get(i).problem().items(), read.get(i).problem().items());
      assertEquals(supply(made.get(i)), supply(read.get(i)));
    }
  }

  @Test
  void fillsSticksExactlyInTheZeroWasteClass() {
    for (int least = 3; least <= 8; least++) {
      ClassSpec spec = ClassSpec.parse("zero-waste:n=202,c=10000,least=" + least);
      for (Instance instance : InstanceClasses.generate(spec, 1, 5)) {
        assertEquals(202, instance.types(), "all lengths distinct");
        assertEquals(instance.known().optimum().orElseThrow() * 10_000, toCut(instance));
      }
    }
  }

  @Test
  void keepsPiecesOfTheZeroWasteClassAboveTheSmallest() {
    ClassSpec spec = ClassSpec.parse("zero-waste:n=202,c=10000,smallest=100");
    for (Instance instance : InstanceClasses.generate(spec, 1, 5)) {
      assertTrue(instance.problem().items().stream().allMatch(item -> item.size() >= 1000));
      assertEquals(instance.known().optimum().orElseThrow() * 10_000, toCut(instance));
    }
  }

  /** All is as long as one stick fewer, and nothing but large pieces is longer than the fifteen. */
  @Test
  void needsOneStickMoreThanItsLengthInTheOddCoreClass() {
    for (Instance instance : InstanceClasses.generate(ClassSpec.parse("odd-core:n=201"), 1, 5)) {
      assertEquals(201, instance.types(), "all lengths distinct");
      assertEquals(OptionalLong.of(66), instance.known().optimum());
      assertEquals(65 * 2500, toCut(instance));
      assertEquals(62, instance.problem().items().stream().filter(i -> i.size() >= 2200).count());
    }
  }

  @Test
  void fillsSticksExactlyByThreeInTheTripletClass() {
    for (Instance instance : InstanceClasses.generate(ClassSpec.parse("triplets:n=249"), 1, 5)) {
      assertEquals(OptionalLong.of(83), instance.known().optimum());
      assertEquals(249, instance.pieces());
      assertEquals(83_000, toCut(instance));
    }
  }

  /**
   * The generator of Lewis, Goodman and Miller: from 1 the first values are 16807, 282475249 and
   * 1622650073, and the ten thousandth is 1043618065 (Park and Miller, CACM 31, 1988).
   */
  @Test
  void drawsThePublishedLehmerSequence() {
    LehmerGenerator random = new LehmerGenerator(1);
    double modulus = (1L << 31) - 1;
    assertEquals(16_807 / modulus, random.next());
    assertEquals(282_475_249 / modulus, random.next());
    assertEquals(1_622_650_073 / modulus, random.next());
    LongStream.range(3, 9_999).forEach(step -> random.next());
    assertEquals(1_043_618_065 / modulus, random.next());
  }

  /**
   * By hand from seed 1: u = 0.0000078264, 0.1315377881, then r = 0.7556053222, 0.4586501319; with
   * L = 10000, v1 = 0.01, v2 = 0.51: lengths 100 and 757, demands floor(20 x 0.62228 + 0.5) = 12
   * and floor(20 x 0.37772 + 0.5) = 8, the greater length first.
   */
  @Test
  void followsGauAndWaescherByHand() {
    ClassSpec spec = ClassSpec.parse("gau-waescher:m=2,c=10000,mean=10,v1=10,v2=510");
    Instance instance = InstanceClasses.generate(spec, 1, 1).get(0);

    assertEquals(
        List.of(new Item(757, 12, false), new Item(100, 8, false)), instance.problem().items());
  }

  @Test
  void keepsToTheRangesOfItsClasses() {
    for (Instance instance : InstanceClasses.generate(ClassSpec.parse("hard-distinct"), 1, 20)) {
      assertEquals(instance.pieces(), instance.types());
      assertTrue(instance.types() >= 160 && instance.types() <= 200);
      assertTrue(instance.problem().items().get(0).size() <= 800);
    }
    for (Instance instance : InstanceClasses.generate(ClassSpec.parse("several-lengths"), 1, 10)) {
      int lengths = instance.problem().stocks().size();
      assertTrue(lengths >= 4 && lengths <= 10);
      assertEquals(100, instance.types());
      assertEquals(4000, instance.pieces());
      assertTrue(instance.problem().stocks().stream().allMatch(Stock::isLimited));
    }
  }

  @Test
  void makesAWeekWithFiveMaterialsAJob() {
    var week = Week.of(100, 1);

    assertEquals(100, week.jobs().size());
    assertTrue(week.jobs().stream().allMatch(job -> job.pieces().size() == 5 * 8));
    assertEquals(60, week.materials().size());
    assertEquals(week, Week.of(100, 1));
    assertNotEquals(week.jobs(), Week.of(100, 2).jobs());
  }

  @Test
  void writesAWeekAsAFolder(@TempDir Path folder) throws IOException {
    WeekFolder.write(Week.of(3, 1), folder);

    assertTrue(Files.readString(folder.resolve("shop.yaml")).contains("end-trim: 1/2\""));
    assertEquals(
        121, Files.readAllLines(folder.resolve("prices").resolve("hollowmere.csv")).size());
    try (Stream<Path> jobs = Files.list(folder.resolve("jobs"))) {
      assertEquals(3, jobs.count());
    }
  }

  @Test
  void namesWhatIsWrongWithAClass() {
    assertFault("nosuch", "no class is called 'nosuch'");
    assertFault("uniform:m=3", "'m' is no parameter of it");
    assertFault("uniform:n=x", "'n=x' is not NAME=NUMBER");
    assertFault("triplets:n=61", "n is a multiple of 3");
    assertFault("hard-distinct:n=900,n-most=900", "there are not 900 distinct sizes");
  }

  private static void assertFault(String text, String expected) {
    IllegalArgumentException fault =
        assertThrows(
            IllegalArgumentException.class,
            () -> InstanceClasses.generate(InstanceClasses.resolve(text).get(0), 1, 1));
    assertTrue(String.valueOf(fault.getMessage()).contains(expected), fault.getMessage());
  }

  private static long longest(Instance instance) {
    return instance.problem().stocks().stream().mapToLong(Stock::capacity).max().orElseThrow();
  }

  private static long toCut(Instance instance) {
    return instance.problem().items().stream().mapToLong(i -> i.size() * i.demand()).sum();
  }

  private static List<List<Long>> supply(Instance instance) {
    long most =
        instance.problem().stocks().stream().mapToLong(Stock::packCost).reduce(0, Instances::gcd);
    return instance.problem().stocks().stream()
        .map(s -> List.of(s.capacity(), s.packCost() / most, (long) s.mostPacks()))
        .toList();
  }

  private static final class Instances {
    static long gcd(long a, long b) {
      return b == 0 ? a : gcd(b, a % b);
    }
  }
}

package lapwright.bench.instance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;
import lapwright.problem.StickProblem.Item;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class InstanceReaderTest {
  @TempDir Path folder;

  private final InstanceReader reader = new InstanceReader();

  @Test
  void readsBinPackingAndMergesEqualSizes() throws IOException {
    Instance instance = only("plain.txt", "4\n10\n3\n7\n3\n5\n");

    assertEquals("plain", instance.name());
    assertEquals(4, instance.pieces());
    assertEquals(
        List.of(new Item(7, 1, false), new Item(5, 1, false), new Item(3, 2, false)),
        instance.problem().items());
    assertTrue(instance.isSingleStock());
    assertEquals(10, instance.problem().stocks().get(0).capacity());
  }

  @Test
  void readsBinPackingWithANameAndTakesItsBestKnownForAnUpperBoundOnly() throws IOException {
    Instance instance = only("any.bpa", "u3\n150 3 48\n94\n69\n32\n");

    assertEquals("u3", instance.name());
    assertEquals(OptionalLong.empty(), instance.known().optimum());
    assertEquals(OptionalLong.of(48), instance.known().reached());
  }

  @Test
  void readsSeveralNamedInstancesInOneFile() throws IOException {
    List<Instance> instances =
        read("many.txt", "2\n one\n 100.0 2 1\n 49.5\n50.5\n two\n 10 1 1\n 7\n");

    assertEquals(List.of("one", "two"), instances.stream().map(Instance::name).toList());
    assertEquals(1000, instances.get(0).problem().stocks().get(0).capacity());
    assertEquals(505, instances.get(0).problem().items().get(0).size());
  }

  @Test
  void readsCuttingStock() throws IOException {
    Instance instance = only("cut.txt", "2\n100\n45\t97\n14 211\n");

    assertEquals(308, instance.pieces());
    assertEquals(new Item(45, 97, false), instance.problem().items().get(0));
  }

  @Test
  void readsSeveralStockLengthsWithLimitsAndDecimalCosts() throws IOException {
    Instance instance = only("several.txt", "2\n5 -1 6.25\n9 30 10\n2\n2 20\n4 20\n");

    assertEquals(2, instance.costDecimals());
    assertEquals(Instance.stock(5, 625, Integer.MAX_VALUE), instance.problem().stocks().get(0));
    assertEquals(Instance.stock(9, 1000, 30), instance.problem().stocks().get(1));
  }

  @Test
  void tellsOneStockLengthFromAnInstanceThatIsNamedOne() throws IOException {
    assertEquals("several", only("several.txt", "1\n10 5 1\n2\n3 4\n2 4\n").name());
    assertEquals("1", only("named.txt", "1\n10 2 1\n3\n2\n").name());
  }

  @Test
  void keepsDecimalsExactly() throws IOException {
    Instance instance = only("decimals.txt", "2\n7.4\n2.9 100\n1.55 10\n");

    assertEquals(740, instance.problem().stocks().get(0).capacity());
    assertEquals(155, instance.problem().items().get(1).size());
  }

  @Test
  void takesPublishedOptimaFromTheListBesideTheInstances() throws IOException {
    Files.writeString(folder.resolve("optima.csv"), "name,optimum\nplain,2\n");

    assertEquals(OptionalLong.of(2), only("plain.txt", "3\n10\n7\n6\n3\n").known().optimum());
  }

  @Test
  void callsAFoldersInstancesByTheFoldersName() throws IOException {
    Path group = Files.createDirectories(folder.resolve("deep").resolve("some-class"));
    Files.writeString(group.resolve("b.txt"), "1\n10\n7\n");
    Files.writeString(group.resolve("a.txt"), "1\n10\n7\n");

    List<Instance> instances = reader.read(folder);

    assertEquals(List.of("a", "b"), instances.stream().map(Instance::name).toList());
    assertEquals("some-class", instances.get(0).group());
  }

  @Test
  void tellsEveryFaultOfAFileWithItsLine() throws IOException {
    assertEquals(
        List.of(
            "bad.txt:4: size '-3' is not a number above 0",
            "bad.txt:5: size 11 is above 10",
            "bad.txt:6: '3 4' is not a single size",
            "bad.txt: holds 4 sizes, not the 5 that line 2 announces"),
        faults("bad.txt", "# a comment\n5\n10\n-3\n11\n3 4\n7\n"));
  }

  @Test
  void tellsFaultsOfStockLinesWithTheirLines() throws IOException {
    assertEquals(
        List.of(
            "bad.txt:2: availability '-2' is not a whole number of at least 0",
            "bad.txt:3: cost 'x' is not a number from 0",
            "bad.txt:5: demand '0' is not a whole number of at least 1"),
        faults("bad.txt", "2\n5 -2 6\n9 3 x\n1\n2 0\n"));
  }

  @Test
  void refusesWhatFollowsTheInstance() throws IOException {
    assertEquals(
        List.of("long.txt:4: nothing is expected after the last of the instance's lines"),
        faults("long.txt", "1\n10\n7\n8\n"));
  }

  @Test
  void refusesWhatIsMissingEmptyOrNoText() throws IOException {
    Files.write(folder.resolve("binary.txt"), new byte[] {(byte) 0xff, (byte) 0xfe, 0, 1});
    Files.writeString(folder.resolve("empty.txt"), "\n");
    reader.read(folder);
    reader.read(folder.resolve("gone.txt"));

    assertEquals(3, reader.faults().size());
    assertTrue(reader.faults().toString().contains("is not a text file in UTF-8"));
    assertTrue(reader.faults().toString().contains("holds no instance"));
    assertTrue(reader.faults().toString().contains("does not exist"));
  }

  @Test
  void readsTheInstancesThatComeWithTheProject() {
    List<Instance> instances = reader.read(Path.of("instances"));

    assertEquals(List.of(), reader.faults());
    assertEquals(26, instances.size());
    assertFalse(instances.stream().anyMatch(i -> i.known().optimum().isEmpty()));
  }

  private Instance only(String name, String text) throws IOException {
    List<Instance> instances = read(name, text);
    assertEquals(List.of(), reader.faults());
    assertEquals(1, instances.size());
    return instances.get(0);
  }

  private List<String> faults(String name, String text) throws IOException {
    assertEquals(List.of(), read(name, text));
    return reader.faults().stream()
        .map(fault -> fault.toString().replace(folder + "/", ""))
        .toList();
  }

  private List<Instance> read(String name, String text) throws IOException {
    Path file = folder.resolve(name);
    Files.writeString(file, text);
    return reader.read(file);
  }
}

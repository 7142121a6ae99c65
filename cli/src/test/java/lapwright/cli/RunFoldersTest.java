package lapwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Folders with runs, from files to the printed order. The answers are worked orders of our own,
 * each found by full enumeration of patterns and by an independent integer program beforehand.
 */
final class RunFoldersTest {
  private static final String SHELTER = "jobs/quay-shelter.yaml";

  @TempDir Path dir;

  private static void assertAnswer(String answer, CommandRun run) {
    assertEquals(0, run.status(), run.err());
    String start = run.out().replaceAll("\\s+", " ");
    assertTrue(
        start.startsWith("Buy " + answer + " of material. Proved: no plan costs less."), run.out());
  }

  @Test
  void purlinsThatButtOverPostsWithTheGapThatTheDrawingsAllow() throws IOException {
    RunFolder purlins = RunFolder.copy("purlins", dir);
    assertAnswer("8 sticks from 1 supplier for 1 job: $164.80", purlins.run("order"));
  }

  @Test
  void withoutTheGapTwoHalvesFailByACutAndTheOrderSaysSo() throws IOException {
    RunFolder purlins =
        RunFolder.copy("purlins", dir).replace(SHELTER, "butt-gap: 1/8\"", "butt-gap: 0");
    CommandRun order = purlins.run("order");
    assertAnswer("10 sticks from 1 supplier for 1 job: $206.00", order);
    String out = order.out().replaceAll("\\s+", " ");
    assertTrue(
        out.contains("(12'-0\") 2 times fails to fit 24'-0\" from pellbrook by 3/32\""),
        order.out());
  }

  @Test
  void withTrimmedEndsNoWholeStickReachesSoEachLineIsInThree() throws IOException {
    RunFolder purlins =
        RunFolder.copy("purlins", dir)
            .replace("shop.yaml", "kerf: 3/32\"", "kerf: 3/32\", end-trim: 1/2\"")
            .replace("materials.yaml", "mill-ends: good", "mill-ends: bad");
    assertAnswer("15 sticks from 1 supplier for 1 job: $309.00", purlins.run("order"));
  }

  @Test
  void bearingsSayTheSameAsTheirPlaces() throws IOException {
    RunFolder purlins =
        RunFolder.copy("purlins", dir)
            .replace(SHELTER, "joints-at: [12', 24']", "bearings: { first: 0, spacing: 12' }");
    assertAnswer("8 sticks from 1 supplier for 1 job: $164.80", purlins.run("order"));
  }

  @Test
  void eachJobFromOneMakerAndCombiningSavesNothing() throws IOException {
    RunFolder eaves = RunFolder.copy("eaves", dir);
    CommandRun order = eaves.run("order");
    assertAnswer("18 sticks from 1 supplier for 2 jobs: $255.60", order);
    assertTrue(order.out().contains("Saved by combining: nothing"), order.out());
  }

  @Test
  void fromTheLongerStickAloneItCostsMore() throws IOException {
    RunFolder eaves = RunFolder.copy("eaves", dir);
    CommandRun order = eaves.run("order", "--only-supplier", "ostermoor");
    assertTrue(
        order.out().startsWith("Buy 15 sticks from 1 supplier for 2 jobs: $256.50"), order.out());
  }

  @Test
  void withMixedLotsItWouldCostLessAndTheCustomerWouldRefuseTheEave() throws IOException {
    RunFolder eaves =
        RunFolder.copy("eaves", dir)
            .replace("materials.yaml", "one-lot-per: job", "one-lot-per: none");
    CommandRun order = eaves.run("order");
    assertEquals(0, order.status(), order.err());
    assertTrue(
        order.out().startsWith("Buy 16 sticks from 2 suppliers for 2 jobs: $230.10"), order.out());
  }

  @Test
  void copiesOfAJobTakeTheirLinesAsOften() throws IOException {
    RunFolder purlins =
        RunFolder.copy("purlins", dir).replace(SHELTER, "status: firm", "status: firm\ntimes: 2");
    // 10 lines: ten whole sticks and ten halves
    assertAnswer("15 sticks from 1 supplier for 1 job: $309.00", purlins.run("order"));
  }

  @Test
  void aRuleThatNoSplitKeepsIsWrongInputWithItsLine() throws IOException {
    RunFolder purlins =
        RunFolder.copy("purlins", dir).replace(SHELTER, "joints-at: [12', 24']", "joints-at: [8']");
    CommandRun order = purlins.run("order");
    assertEquals(3, order.status());
    assertTrue(order.err().contains("jobs/quay-shelter.yaml, line 11"), order.err());
    assertTrue(order.err().contains("Run U1 of quay-shelter"), order.err());
    assertTrue(
        order.err().contains("Add a place between, or offer sticks that give 27'-11-15/16\""),
        order.err());
  }

  /** The longer stick costs hardly more, so that pieces of the shorter are best cut from it. */
  @ParameterizedTest
  @CsvSource({"0, none", "3/32\", none", "0, job", "3/32\", job", "0, run", "3/32\", run"})
  void fullSticksOfAShorterLengthAreNotCutFromALongerOne(String kerf, String lots)
      throws IOException {
    RunFolder folder =
        RunFolder.copy("full-sticks", dir)
            .replace("shop.yaml", "kerf: 0", "kerf: " + kerf)
            .replace("materials.yaml", "one-lot-per: none", "one-lot-per: " + lots);
    CommandRun order = folder.run("order");
    assertEquals(0, order.status(), order.err());
  }

  /** 40' in pieces of at most 10' takes three of 10' uncut, but there are two, and any of 20'. */
  @Test
  void whereTheShorterSticksAreTooFewItSaysWhatToDo() throws IOException {
    RunFolder folder =
        RunFolder.copy("full-sticks", dir)
            .replace("prices/pellbrook.csv", "eave-trim-brown,10',20.00,each\n", "")
            .put("on-hand.csv", "material,length,qty\neave-trim-brown,10',2\n")
            .delete("prices/ostermoor.csv")
            .replace(
                "jobs/boat-cover.yaml",
                "25', qty: 2, joint: butt, extra-joints: 1",
                "40', qty: 1, joint: butt, longest-piece: 10'");
    CommandRun order = folder.run("order");
    assertEquals(4, order.status(), order.out() + order.err());
    assertTrue(
        (order.out() + order.err())
            .replaceAll("\\s+", " ")
            .contains("every full stick of its runs uncut"),
        order.out() + order.err());
  }
}

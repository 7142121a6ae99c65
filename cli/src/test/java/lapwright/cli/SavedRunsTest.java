package lapwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Saved plans with runs and lots: checked from the file alone, broken ones rejected. */
final class SavedRunsTest {
  private static final ObjectMapper JSON =
      new ObjectMapper().enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS);
  private static final BigDecimal SIXTY_FOURTH = new BigDecimal("0.396875");

  @TempDir Path dir;

  private RunFolder saved(String name) throws IOException {
    RunFolder folder = RunFolder.copy(name, dir);
    CommandRun order = folder.run("order", "--save");
    assertEquals(0, order.status(), order.err());
    return folder;
  }

  private static CommandRun checkAfter(RunFolder folder, Consumer<JsonNode> change)
      throws IOException {
    Path file = folder.folder().resolve("plan.json");
    JsonNode plan = JSON.readTree(Files.readString(file));
    change.accept(plan);
    folder.put("plan.json", JSON.writerWithDefaultPrettyPrinter().writeValueAsString(plan));
    return folder.run("check");
  }

  private static void assertRejected(String rule, CommandRun check) {
    assertEquals(6, check.status(), check.out() + check.err());
    String all = (check.out() + check.err()).replaceAll("\\s+", " ");
    assertTrue(all.contains(rule), rule + "\n" + check.out() + check.err());
  }

  private static ObjectNode piece(JsonNode plan, int line, int piece) {
    return (ObjectNode) plan.at("/runs/" + line + "/pieces/" + piece);
  }

  private static void add(ObjectNode piece, String field, BigDecimal mm) {
    piece.set(field, JsonNodeFactory.instance.numberNode(piece.get(field).decimalValue().add(mm)));
  }

  /** Cuts a piece longer on its ticket too, so that tickets and lines agree. */
  private static void lengthen(JsonNode plan, ObjectNode piece, BigDecimal mm) {
    add(piece, "lengthMm", mm);
    for (JsonNode pattern : plan.at("/materials/0/patterns")) {
      for (JsonNode cut : pattern.get("cuts")) {
        if (cut.get("mark").equals(piece.get("mark"))) {
          add((ObjectNode) cut, "lengthMm", mm);
          if (pattern.get("offcuts").size() == 1) {
            add((ObjectNode) pattern.at("/offcuts/0"), "lengthMm", mm.negate());
          }
        }
      }
    }
  }

  @Test
  void aSavedPlanWithRunsAndLotsIsCheckedFromItsFile() throws IOException {
    for (String name : new String[] {"purlins", "eaves"}) {
      RunFolder folder = RunFolder.copy(name, dir.resolve(name));
      assertEquals(0, folder.run("order", "--save").status());
      String first = Files.readString(folder.folder().resolve("plan.json"));
      CommandRun check = folder.run("check");
      assertEquals(0, check.status(), check.out() + check.err());
      assertTrue(check.out().contains("The saved plan still fits"), check.out());
      assertTrue(check.out().contains("The plan is sound"), check.out());
      assertEquals(0, folder.run("order", "--save").status());
      assertEquals(
          first, Files.readString(folder.folder().resolve("plan.json")), "the same, byte for byte");
      assertEquals(0, folder.run("cut").status());
    }
  }

  @Test
  void theFileTellsWhereEachPieceLiesAndWhichTicketGivesIt() throws IOException {
    RunFolder purlins = saved("purlins");
    JsonNode plan = JSON.readTree(Files.readString(purlins.folder().resolve("plan.json")));
    assertEquals(5, plan.get("runs").size());
    for (JsonNode line : plan.get("runs")) {
      assertEquals("U1", line.get("mark").asText());
      assertEquals("quay-shelter", line.get("job").asText());
      assertEquals(2, line.get("pieces").size());
      assertEquals(1, line.get("joints").size());
      String at = line.at("/joints/0/atMm").asText();
      assertTrue(at.equals("3657.6") || at.equals("7315.2"), at);
      for (JsonNode piece : line.get("pieces")) {
        assertEquals(ticketOf(plan, piece.get("mark").asText()), piece.get("ticket").asText());
      }
    }
    assertEquals(5, plan.at("/jobs/0/runs/0/qty").asInt());
  }

  /**
   * By hand: five lines of 36' fill 7.5 sticks of 24', so that 8 at $20.60 are the least, whatever
   * is asked for; whole sticks and halves reach that.
   */
  @Test
  void theFileTellsWhatChoosingTheJointsSaved() throws IOException {
    JsonNode plan = JSON.readTree(RunFolder.copy("purlins", dir).run("order", "--json").out());
    assertEquals(1, plan.get("joints").size());
    JsonNode purlins = plan.at("/joints/0");
    assertEquals("cee-4-16ga", purlins.get("material").asText());
    for (String way : new String[] {"planned", "fullSticks", "oneMoreJoint"}) {
      assertEquals(164.8, purlins.at("/" + way + "/cost").asDouble(), way);
      assertTrue(purlins.at("/" + way + "/proved").asBoolean(), way);
    }
    assertEquals(0, purlins.get("saved").asDouble());
    assertEquals(0, purlins.get("oneMoreWouldSave").asDouble());
  }

  private static String ticketOf(JsonNode plan, String mark) {
    for (JsonNode pattern : plan.at("/materials/0/patterns")) {
      for (JsonNode cut : pattern.get("cuts")) {
        if (cut.get("mark").asText().equals(mark)) {
          return pattern.get("ticket").asText();
        }
      }
    }
    return "none";
  }

  @Test
  void aJointMovedOffItsBearingIsRejected() throws IOException {
    CommandRun check =
        checkAfter(
            saved("purlins"),
            plan -> {
              // the whole stick is the second piece: it starts an inch early, the first ends there
              for (int line = 0; line < 5; line++) {
                ObjectNode second = piece(plan, line, 1);
                if (second.get("lengthMm").decimalValue().compareTo(new BigDecimal("7315.2"))
                    == 0) {
                  BigDecimal inch = new BigDecimal("-25.4");
                  lengthen(plan, piece(plan, line, 0), inch);
                  add(second, "startMm", inch);
                  return;
                }
              }
              throw new AssertionError("no line ends with a whole stick");
            });
    assertRejected("joints stand only where they may", check);
  }

  @Test
  void aLapShortByASixtyFourthIsRejected() throws IOException {
    CommandRun check =
        checkAfter(
            saved("eaves"),
            plan -> {
              lengthen(plan, piece(plan, 0, 0), SIXTY_FOURTH.negate());
            });
    assertRejected("pieces lap, or leave a gap, as the run asks for", check);
  }

  @Test
  void aMissingPieceIsRejected() throws IOException {
    CommandRun fromLine =
        checkAfter(saved("eaves"), plan -> ((ArrayNode) plan.at("/runs/0/pieces")).remove(1));
    assertRejected("every line of every run is laid once, piece by piece", fromLine);
    assertRejected("every needed piece is cut exactly once", fromLine);
  }

  @Test
  void aPieceThatNoTicketCutsIsRejected() throws IOException {
    CommandRun check =
        checkAfter(
            saved("eaves"),
            plan -> {
              for (JsonNode pattern : plan.at("/materials/0/patterns")) {
                ArrayNode cuts = (ArrayNode) pattern.get("cuts");
                if (cuts.size() > 1) {
                  cuts.remove(0);
                  return;
                }
              }
              throw new AssertionError("no ticket has two cuts");
            });
    assertRejected("every needed piece is cut exactly once", check);
  }

  @Test
  void aLineThatIsMissingIsRejected() throws IOException {
    CommandRun check = checkAfter(saved("eaves"), plan -> ((ArrayNode) plan.get("runs")).remove(2));
    assertRejected("every line of every run is laid once", check);
  }

  @Test
  void twoLinesSwappedAreRejected() throws IOException {
    CommandRun check =
        checkAfter(
            saved("eaves"),
            plan -> {
              // an eave of 36'-8" and a rake of 13'-5" trade their pieces
              JsonNode eave = plan.at("/runs/0/pieces");
              JsonNode rake = plan.at("/runs/2/pieces");
              ((ObjectNode) plan.at("/runs/0")).set("pieces", rake);
              ((ObjectNode) plan.at("/runs/2")).set("pieces", eave);
            });
    assertRejected("the pieces of a line cover its run from end to end", check);
  }

  @Test
  void twoLotsOnOneJobAreRejected() throws IOException {
    CommandRun check =
        checkAfter(
            saved("eaves"),
            plan -> {
              // one ticket takes last spring's offcut, which is as long, instead of a bought stick
              ObjectNode ticket = (ObjectNode) plan.at("/materials/0/patterns/0");
              ticket.put("supply", "rack:R1");
            });
    assertRejected("makers and lots do not mix where they must not", check);
  }

  @Test
  void aBoundThatTheCertificateDoesNotGiveIsRejected() throws IOException {
    CommandRun check =
        checkAfter(
            saved("eaves"),
            plan -> {
              for (JsonNode node : plan.at("/materials/0/certificate")) {
                for (JsonNode weight : node.path("weights")) {
                  ObjectNode each = (ObjectNode) weight;
                  each.put("weight", each.get("weight").asLong() / 2);
                }
                if (node.has("perUnit")) {
                  ((ObjectNode) node).put("perUnit", 0);
                }
              }
            });
    assertRejected("the stated bound follows from the certificate", check);
  }

  @Test
  void aChangedNumberOfLinesIsToldAsQuantities() throws IOException {
    RunFolder eaves = saved("eaves");
    eaves.replace("jobs/pier-canopy.yaml", "qty: 2", "qty: 3");
    CommandRun check = eaves.run("check");
    assertEquals(6, check.status());
    assertTrue(
        check.out().contains("E1 of pier-canopy, lines of 24'-4\": planned 2, now 3"), check.out());
  }

  @Test
  void aChangedRuleIsToldByItsName() throws IOException {
    RunFolder eaves = saved("eaves");
    eaves
        .replace("jobs/pier-canopy.yaml", "lap: 2\"", "lap: 3\"")
        .replace("materials.yaml", "one-lot-per: job", "one-lot-per: run")
        .replace("rack.csv", "last spring", "spring");
    CommandRun check = eaves.run("check");
    assertEquals(6, check.status());
    assertTrue(check.out().contains("E1 of pier-canopy, lap: planned 2\", now 3\""), check.out());
    assertTrue(check.out().contains("one lot per: planned job, now run"), check.out());
  }

  private static final String ANOTHER =
      "    - { mark: E2, length: 20', qty: 1, joint: lap, lap: 2\", shortest-piece: 24\" }\n";

  @Test
  void moreBuysOnlyTheRunsThatCameLaterAndTellsOfTheOtherLot() throws IOException {
    RunFolder eaves = saved("eaves");
    Path job = eaves.folder().resolve("jobs/pier-canopy.yaml");
    eaves.put("jobs/pier-canopy.yaml", Files.readString(job) + ANOTHER);
    CommandRun more = eaves.run("order", "--more", "--save");
    assertEquals(0, more.status(), more.err());
    // 20' and a lap of 2" take two sticks of 10'-2"
    assertTrue(more.out().startsWith("Buy 2 sticks from 1 supplier for 1 job: $28.40"), more.out());
    assertTrue(more.out().contains("pier-canopy run E2, all of it"), more.out());
    assertTrue(
        more.err()
            .contains(
                "lots of eave-trim-brown must not mix within pier-canopy, and the saved order cuts"
                    + " it for that job already. What is left of that lot does not suffice, so"
                    + " more is bought of the same maker"),
        more.err());
    CommandRun check = eaves.run("check");
    assertEquals(0, check.status(), check.out() + check.err());
    assertTrue(check.out().contains("The saved plan still fits"), check.out());
  }

  /**
   * A closing piece of 4'-2" fits what pier-canopy's own sticks left, of the same lot: nothing is
   * bought, and nobody is warned. One line of 24'-4" closes with 4'-4" and leaves 5'-10".
   */
  @Test
  void moreComesFromWhatIsLeftOfTheSameLotWhereThatSuffices() throws IOException {
    RunFolder eaves = RunFolder.copy("eaves", dir);
    eaves.replace("jobs/boat-cover.yaml", "status: firm", "status: done");
    eaves.replace("jobs/pier-canopy.yaml", "qty: 2", "qty: 1");
    assertEquals(0, eaves.run("order", "--save").status());
    Path job = eaves.folder().resolve("jobs/pier-canopy.yaml");
    eaves.put(
        "jobs/pier-canopy.yaml",
        Files.readString(job)
            + "    - { mark: E2, length: 4'-2\", qty: 1, joint: lap, lap: 2\" }\n");
    CommandRun more = eaves.run("order", "--more", "--save");
    assertEquals(0, more.status(), more.err());
    assertTrue(more.out().startsWith("Buy nothing"), more.out());
    assertFalse(more.err().contains("must not mix"), more.err());
    assertEquals(0, eaves.run("check").status());
  }

  /**
   * Where lots must not mix within a run only: one more line of 24'-4" of a run belongs to the
   * run's lot, and more is bought of its maker, with a warning; a run that is new may be of any
   * lot.
   */
  @Test
  void linesThatAreAddedToARunComeFromItsLotAndOtherRunsFromAny() throws IOException {
    RunFolder eaves = RunFolder.copy("eaves", dir);
    eaves.replace("materials.yaml", "one-lot-per: job", "one-lot-per: run");
    assertEquals(0, eaves.run("order", "--save").status());
    String saved = Files.readString(eaves.folder().resolve("plan.json"));
    JsonNode patterns = JSON.readTree(saved).at("/materials/0/patterns");
    Set<String> makers = new TreeSet<>();
    patterns.forEach(
        pattern ->
            pattern
                .at("/cuts")
                .forEach(
                    cut -> {
                      if (cut.at("/mark").asText().startsWith("E1/")) {
                        makers.add(pattern.at("/supplier").asText());
                      }
                    }));
    assertEquals(1, makers.size(), makers.toString());
    eaves.replace("jobs/pier-canopy.yaml", "qty: 2", "qty: 3");
    CommandRun more = eaves.run("order", "--more", "--save");
    assertEquals(0, more.status(), more.err());
    assertTrue(
        more.err()
            .contains(
                "lots of eave-trim-brown must not mix within run E1 of pier-canopy, and the saved"
                    + " order cuts it for that run already. What is left of that lot does not"
                    + " suffice, so more is bought of the same maker"),
        more.err());
    JsonNode later =
        JSON.readTree(Files.readString(eaves.folder().resolve("plan.json"))).at("/more/0");
    later
        .at("/materials/0/patterns")
        .forEach(
            pattern ->
                assertTrue(
                    pattern.at("/source").asText().equals("bought")
                        || makers.contains(pattern.at("/supplier").asText()),
                    pattern.toString()));
    assertEquals(0, eaves.run("check").status());
    RunFolder other = RunFolder.copy("eaves", dir.resolve("other"));
    other.replace("materials.yaml", "one-lot-per: job", "one-lot-per: run");
    assertEquals(0, other.run("order", "--save").status());
    Path job = other.folder().resolve("jobs/pier-canopy.yaml");
    other.put("jobs/pier-canopy.yaml", Files.readString(job) + ANOTHER);
    CommandRun another = other.run("order", "--more");
    assertEquals(0, another.status(), another.err());
    assertFalse(another.err().contains("must not mix"), another.err());
  }

  /** One more line of 24'-4": three sticks of 10'-2" at a lap of 2" cover 30'-2". */
  @Test
  void moreBuysOnlyTheLinesThatWereAddedToARunAndCountsOn() throws IOException {
    RunFolder eaves = saved("eaves");
    eaves.replace("jobs/pier-canopy.yaml", "qty: 2", "qty: 3");
    CommandRun more = eaves.run("order", "--more", "--save");
    assertEquals(0, more.status(), more.err());
    assertTrue(more.out().contains("pier-canopy run E1, line 3"), more.out());
    JsonNode plan = JSON.readTree(Files.readString(eaves.folder().resolve("plan.json")));
    JsonNode line = plan.at("/more/0/runs/0");
    assertEquals("E1/3.1", line.at("/pieces/0/mark").asText());
    assertEquals(1, plan.at("/more/0/runs").size());
    assertEquals(3, plan.at("/more/0/jobs/0/runs/0/firstLine").asInt());
    CommandRun check = eaves.run("check");
    assertEquals(0, check.status(), check.out() + check.err());
    CommandRun cut = eaves.run("cut", "--all");
    assertEquals(0, cut.status(), cut.err());
    assertTrue(cut.out().contains("E1/3.1"), cut.out());
    CommandRun again = eaves.run("order", "--more");
    assertTrue(again.out().startsWith("Nothing to buy"), again.out());
    eaves.replace("jobs/pier-canopy.yaml", "qty: 3", "qty: 1");
    CommandRun fewer = eaves.run("order", "--more");
    assertEquals(0, fewer.status(), fewer.err());
    assertTrue(fewer.out().contains("3 to 1"), fewer.out());
  }

  @Test
  void moreRefusesARunThatChangedAndTellsOfOneThatIsGone() throws IOException {
    RunFolder eaves = saved("eaves");
    eaves.replace("jobs/pier-canopy.yaml", "lap: 2\"", "lap: 3\"");
    CommandRun changed = eaves.run("order", "--more");
    assertEquals(3, changed.status());
    assertTrue(changed.err().contains("run E1 of pier-canopy is not as the saved order has it"));
    eaves
        .replace("jobs/pier-canopy.yaml", "lap: 3\"", "lap: 2\"")
        .replace("jobs/boat-cover.yaml", "mark: K1", "mark: K2");
    CommandRun gone = eaves.run("order", "--more");
    assertEquals(0, gone.status(), gone.err());
    assertTrue(gone.out().contains("boat-cover run K2, all of it"), gone.out());
    assertTrue(
        gone.out().contains("boat-cover K1, 13'-5\" of eave-trim-brown: 4 to 0"), gone.out());
  }

  /**
   * By hand: 36' from 24' sticks is joined at 12' or at 24', 12' apart these take turns. So the
   * lines that are added begin with what the settled line is not.
   */
  @Test
  void moreLinesOfAStaggeredRunGoOnFromTheSettledOne() throws IOException {
    RunFolder purlins = staggered();
    CommandRun more = purlins.run("order", "--more", "--save");
    assertEquals(0, more.status(), more.err());
    JsonNode plan = JSON.readTree(Files.readString(purlins.folder().resolve("plan.json")));
    BigDecimal settled = plan.at("/runs/0/pieces/0/lengthMm").decimalValue();
    assertEquals(
        0,
        settled.compareTo(plan.at("/more/0/jobs/0/runs/0/settled/0/joints/0/atMm").decimalValue()));
    BigDecimal line = BigDecimal.valueOf(36 * 304_800, 3);
    for (int added = 0; added < 3; added++) {
      BigDecimal first = plan.at("/more/0/runs/" + added + "/pieces/0/lengthMm").decimalValue();
      BigDecimal expected = added % 2 == 0 ? line.subtract(settled) : settled;
      assertEquals(0, expected.compareTo(first), plan.toString());
    }
    assertEquals(0, purlins.run("check").status());
    assertEquals(0, purlins.run("cut", "--all").status());
    // A third order, beside two lines of the second.
    purlins.replace("jobs/quay-shelter.yaml", "qty: 4", "qty: 5");
    assertEquals(0, purlins.run("order", "--more", "--save").status());
    assertEquals(0, purlins.run("check").status());
  }

  /** The settled line laid the other way round stands too close to the one that was added. */
  @Test
  void joinsTooCloseAcrossTwoOrdersAreRejected() throws IOException {
    RunFolder purlins = staggered();
    assertEquals(0, purlins.run("order", "--more", "--save").status());
    String text = Files.readString(purlins.folder().resolve("plan.json"));
    JsonNode plan = JSON.readTree(text);
    BigDecimal first = plan.at("/runs/0/pieces/0/lengthMm").decimalValue();
    BigDecimal second = plan.at("/runs/0/pieces/1/lengthMm").decimalValue();
    purlins.put(
        "plan.json",
        text.replace("U1/1.1", "U1/1.3").replace("U1/1.2", "U1/1.1").replace("U1/1.3", "U1/1.2"));
    CommandRun check =
        checkAfter(
            purlins,
            turned -> {
              ArrayNode pieces = (ArrayNode) turned.at("/runs/0/pieces");
              ((ObjectNode) pieces.get(0)).put("mark", "U1/1.1").put("lengthMm", second);
              ((ObjectNode) pieces.get(1))
                  .put("mark", "U1/1.2")
                  .put("lengthMm", first)
                  .put("startMm", second);
            });
    assertRejected("and the one placed before it of run U1 at least", check);
  }

  /** One line is placed; three more are needed now. */
  private RunFolder staggered() throws IOException {
    RunFolder purlins = RunFolder.copy("purlins", dir);
    purlins.replace("jobs/quay-shelter.yaml", "qty: 5", "qty: 1");
    purlins.replace("jobs/quay-shelter.yaml", "butt-gap: 1/8\"", "stagger: 12'");
    CommandRun order = purlins.run("order", "--save");
    assertEquals(0, order.status(), order.err());
    return purlins.replace("jobs/quay-shelter.yaml", "qty: 1", "qty: 4");
  }
}

package lapwright.print;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import lapwright.check.CheckedPlan;
import lapwright.check.PlanCheck;
import lapwright.check.Verdict;
import lapwright.compare.Comparisons;
import lapwright.measure.LengthStyle;
import lapwright.paperwork.OrderFacts;
import lapwright.paperwork.OrderPaper;
import lapwright.paperwork.TicketPaper;
import lapwright.paperwork.WastePaper;
import lapwright.plan.OrderPlan;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** The papers of one week, word by word, and what holds for all papers whatever names they hold. */
final class PapersTest {
  private static final Style ASCII = Style.plain(LengthStyle.FEET_INCHES);
  private static final Style BOXES = ASCII.withBoxes(true);

  private static String order(HandMadeWeek week, Style style) {
    return OrderText.render(
        OrderPaper.of(week.checked(), Comparisons.of(week.saving()), week.facts()), style);
  }

  private static String cut(HandMadeWeek week, Style style) {
    return TicketText.render(TicketPaper.of(week.checked()), style);
  }

  private static String waste(HandMadeWeek week, Style style) {
    return WasteText.render(WastePaper.of(week.checked()), style);
  }

  private static String check(HandMadeWeek week, Style style) {
    return CheckText.render(week.checked(), style);
  }

  private static List<String> papers(HandMadeWeek week, Style style) {
    return List.of(order(week, style), cut(week, style), waste(week, style), check(week, style));
  }

  @Test
  void orderReadsAsApproved() {
    Approved.assertApproved("order.txt", order(HandMadeWeek.plain(), BOXES));
  }

  @Test
  void ticketsReadAsApproved() {
    Approved.assertApproved("cut.txt", cut(HandMadeWeek.plain(), BOXES.withAll(true)));
  }

  @Test
  void ticketsInAsciiAndMillimetresReadAsApproved() {
    Approved.assertApproved(
        "cut-ascii-mm.txt",
        cut(HandMadeWeek.plain(), ASCII.withAll(true).withUnits(LengthStyle.MILLIMETRES)));
  }

  @Test
  void theListOfTicketsReadsAsApproved() {
    Approved.assertApproved("cut-list.txt", cut(HandMadeWeek.plain(), BOXES));
  }

  @Test
  void wasteReadsAsApproved() {
    Approved.assertApproved("waste.txt", waste(HandMadeWeek.plain(), BOXES.withAll(true)));
  }

  @Test
  void theCheckReadsAsApproved() {
    Approved.assertApproved("check.txt", check(HandMadeWeek.plain(), BOXES.withAll(true)));
  }

  @Test
  void withoutUtf8EveryCharacterIsAscii() {
    HandMadeWeek week = HandMadeWeek.called("Fjærbygd \u2033 \u6771\u4eac caf\u00e9");
    for (Style style : List.of(ASCII, ASCII.withAll(true))) {
      papers(week, style)
          .forEach(
              text ->
                  assertTrue(text.chars().allMatch(c -> c == '\n' || (c >= 32 && c < 127)), text));
    }
    assertTrue(order(week, ASCII).contains("cafe"));
  }

  @Test
  void colourAddsNothingButColour() {
    for (Style style : List.of(ASCII, BOXES.withAll(true))) {
      List<String> plain = papers(HandMadeWeek.plain(), style);
      List<String> coloured = papers(HandMadeWeek.plain(), style.withColour(true));
      for (int i = 0; i < plain.size(); i++) {
        assertTrue(coloured.get(i).contains("\u001b["));
        assertFalse(plain.get(i).contains("\u001b"));
        String bare = coloured.get(i).replaceAll("\u001b\\[\\d+m", "");
        assertEquals(plain.get(i), bare);
      }
    }
  }

  @Test
  void signsAreExplainedWhereTheyArePrinted() {
    String explanation = "+ or - after a length";
    assertTrue(cut(HandMadeWeek.plain(), ASCII.withAll(true)).contains("2'-1-1/16\"-"));
    assertTrue(cut(HandMadeWeek.plain(), ASCII.withAll(true)).contains(explanation));
    String order = order(HandMadeWeek.plain(), ASCII);
    assertTrue(order.contains("\"-") == order.contains(explanation), order);
  }

  @Test
  void theOrderOfNothingSaysSo() {
    CheckedPlan nothing =
        ((Verdict.Sound)
                PlanCheck.check(
                    new OrderPlan(HandMadeWeek.plain().checked().plan().shop(), List.of())))
            .plan();
    assertTrue(
        OrderText.render(OrderPaper.of(nothing, Comparisons.NONE, OrderFacts.NONE), ASCII)
            .startsWith("Nothing to buy"));
    assertTrue(TicketText.render(TicketPaper.of(nothing), ASCII).startsWith("Nothing to cut"));
    assertTrue(WasteText.render(WastePaper.of(nothing), ASCII).startsWith("No waste"));
  }

  @Provide
  Arbitrary<String> names() {
    return Arbitraries.oneOf(
        Arbitraries.strings().ofMinLength(1).ofMaxLength(90),
        Arbitraries.strings().withCharRange('\u0000', '\u00ff').ofMinLength(1).ofMaxLength(40),
        Arbitraries.strings()
            .withChars('\u6771', '\u0301', '\u202e', '\u001b', '\t', '\n', 'w', ' ', '\uff21')
            .ofMinLength(1)
            .ofMaxLength(120),
        Arbitraries.of("\ud83d\udee0\ufe0f".repeat(30), "w".repeat(500), "=1+1", "-", "\""));
  }

  @Property(tries = 60, seed = "10")
  void noLineIsWiderThanThePageAndNoNameMovesTheCursor(
      @ForAll("names") String name,
      @ForAll @IntRange(min = Style.NARROWEST, max = 132) int width,
      @ForAll boolean boxes,
      @ForAll boolean all) {
    Style style = BOXES.withWidth(width).withBoxes(boxes).withAll(all);
    for (String text : papers(HandMadeWeek.called(name), style)) {
      for (String line : text.split("\n", -1)) {
        assertTrue(Words.columns(line) <= width, line);
        assertTrue(
            line.codePoints()
                .noneMatch(
                    c ->
                        Character.isISOControl(c)
                            || Character.getType(c) == Character.FORMAT
                            || (!boxes && c > 126)),
            line);
        assertFalse(line.endsWith(" "), "[" + line + "]");
      }
    }
  }

  @Property(tries = 40, seed = "11")
  void theAnswerStaysOnTheScreen(@ForAll("names") String name, @ForAll boolean boxes) {
    Style style = BOXES.withBoxes(boxes);
    HandMadeWeek week = HandMadeWeek.called(name.substring(0, Math.min(30, name.length())));
    Stream.of(order(week, style), cut(week, style), waste(week, style))
        .forEach(
            text ->
                assertTrue(text.lines().count() <= Style.USUAL_LINES, () -> "too long:\n" + text));
  }
}

package lapwright.files;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

final class MarkerNamesTest {
  private static final String LETTERS = "ACEHJKLMPRTXY";

  @Test
  void neverGivesANameTwiceAlsoWhenTheShortOnesAreUsedUp() {
    MarkerNames names = new MarkerNames(List.of());
    Set<String> seen = new HashSet<>();
    for (int i = 0; i < 5000; i++) {
      String name = names.next();
      assertTrue(seen.add(name), name);
      assertTrue(MarkerNames.isSound(name), name);
      assertEquals(i < 2197 ? 4 : 5, name.length());
    }
  }

  @Test
  void neverGivesANameThatIsOnTheRackAndGoesOnAfterIt() {
    MarkerNames first = new MarkerNames(List.of("R7"));
    List<String> rack = new ArrayList<>(List.of("R7", "N1"));
    for (int i = 0; i < 40; i++) {
      rack.add(first.next());
    }
    String last = rack.get(rack.size() - 1);
    MarkerNames second =
        new MarkerNames(List.of("R7", " " + last.toLowerCase(java.util.Locale.ROOT)));
    for (int i = 0; i < 100; i++) {
      assertFalse(rack.contains(second.next()));
    }
  }

  @Test
  void oneWrongLetterAndTwoSwappedNeighboursAlwaysShow() {
    MarkerNames names = new MarkerNames(List.of());
    for (int n = 0; n < 2500; n++) {
      String name = names.next();
      for (int i = 0; i < name.length(); i++) {
        for (char letter : LETTERS.toCharArray()) {
          String wrong = name.substring(0, i) + letter + name.substring(i + 1);
          assertEquals(wrong.equals(name), MarkerNames.isSound(wrong), wrong);
        }
        if (i > 0) {
          String swapped =
              name.substring(0, i - 1)
                  + name.charAt(i)
                  + name.charAt(i - 1)
                  + name.substring(i + 1);
          assertEquals(swapped.equals(name), MarkerNames.isSound(swapped), swapped);
        }
      }
    }
  }
}

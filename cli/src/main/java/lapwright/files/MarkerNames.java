package lapwright.files;

import java.util.Collection;
import java.util.Set;
import java.util.TreeSet;
import lapwright.OffcutNames;

/**
 * Names for offcuts, written on metal with a marker: four capital letters, the last of which checks
 * the others.
 *
 * <p>The 13 letters are told apart in bad handwriting and upside down; digits are left out because
 * a spreadsheet takes a name like 3E4 for a number. With letters as numbers modulo 13, which is
 * prime, the check letter is 2a + 3b + 4c: one wrong letter always shows, and so do two neighbours
 * swapped, because neighbouring weights (2, 3, 4, and 12 for the check letter itself) differ.
 *
 * <p>Names go on from the highest one on the rack, so that a name comes back as late as possible.
 * Not thread-safe.
 */
public final class MarkerNames implements OffcutNames {
  private static final String LETTERS = "ACEHJKLMPRTXY";
  private static final int BASE = LETTERS.length();

  /** Neighbouring numbers give names that look different; shares no factor with the base. */
  private static final int STRIDE = 1009;

  private final Set<String> taken;
  private int letters = 3;
  private long next;
  private long given;

  /**
   * @param taken names that are on the rack, of whatever scheme
   */
  public MarkerNames(Collection<String> taken) {
    this.taken = new TreeSet<>();
    long highest = 0;
    for (String name : taken) {
      String plain = name.strip().toUpperCase(java.util.Locale.ROOT);
      this.taken.add(plain);
      if (plain.length() == letters + 1 && isSound(plain)) {
        highest = Math.max(highest, numberOf(plain));
      }
    }
    this.next = highest + 1;
  }

  @Override
  public String next() {
    while (true) {
      if (given == names(letters)) {
        letters++;
        given = 0;
        next = 1;
      }
      String name = nameOf(next % names(letters));
      next++;
      given++;
      if (taken.add(name)) {
        return name;
      }
    }
  }

  /** True when the name is of this scheme and its check letter is right. */
  public static boolean isSound(String name) {
    if (name.length() < 4 || name.chars().anyMatch(c -> LETTERS.indexOf(c) < 0)) {
      return false;
    }
    String data = name.substring(0, name.length() - 1);
    return checkLetter(data) == name.charAt(data.length());
  }

  private static long names(int letters) {
    long names = 1;
    for (int i = 0; i < letters; i++) {
      names *= BASE;
    }
    return names;
  }

  private String nameOf(long number) {
    long spread = number * STRIDE % names(letters);
    StringBuilder data = new StringBuilder();
    for (int i = 0; i < letters; i++) {
      data.insert(0, LETTERS.charAt((int) (spread % BASE)));
      spread /= BASE;
    }
    return data.toString() + checkLetter(data.toString());
  }

  private long numberOf(String name) {
    for (long number = 0; number < names(letters); number++) {
      if (nameOf(number).equals(name)) {
        return number;
      }
    }
    throw new IllegalArgumentException(name + " is not of this scheme");
  }

  /**
   * Weights 2 to 11 over and over: neighbours differ, and none is 0 or, last, that of the check.
   */
  private static char checkLetter(String data) {
    int sum = 0;
    for (int i = 0; i < data.length(); i++) {
      sum += (2 + i % 10) * LETTERS.indexOf(data.charAt(i));
    }
    return LETTERS.charAt(sum % BASE);
  }
}

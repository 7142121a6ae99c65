package lapwright.paperwork;

import java.time.DayOfWeek;
import java.time.LocalDate;

/** Counts working days, Monday to Friday. Holidays are not known. */
final class WorkingDays {
  private WorkingDays() {}

  /** So many working days back from the last of them that is not after {@code day}. */
  static LocalDate before(LocalDate day, int workingDays) {
    LocalDate at = day;
    while (isWeekend(at)) {
      at = at.minusDays(1);
    }
    for (int left = workingDays; left > 0; left--) {
      do {
        at = at.minusDays(1);
      } while (isWeekend(at));
    }
    return at;
  }

  /** So many working days on from the first of them that is not before {@code day}. */
  static LocalDate after(LocalDate day, int workingDays) {
    LocalDate at = day;
    while (isWeekend(at)) {
      at = at.plusDays(1);
    }
    for (int left = workingDays; left > 0; left--) {
      do {
        at = at.plusDays(1);
      } while (isWeekend(at));
    }
    return at;
  }

  private static boolean isWeekend(LocalDate day) {
    return day.getDayOfWeek() == DayOfWeek.SATURDAY || day.getDayOfWeek() == DayOfWeek.SUNDAY;
  }
}

package lapwright.plan;

import java.util.List;
import java.util.Objects;
import lapwright.measure.Length;

/**
 * What is cut from one stick, and how many sticks are cut that way: a ticket.
 *
 * @param ticket name of the ticket, unique in the plan and stable once saved
 * @param supply key of the supply that its sticks come from
 * @param times how many sticks
 * @param cuts in the order in which they are made; empty never
 * @param offcut what is left of each stick after the last cut, 0 when nothing is
 * @param offcutNames names of the offcuts that go to the rack, one a stick; empty when the offcut
 *     is scrap or nothing
 */
public record Pattern(
    String ticket,
    String supply,
    int times,
    List<Cut> cuts,
    Length offcut,
    List<String> offcutNames) {
  public Pattern {
    Objects.requireNonNull(ticket);
    Objects.requireNonNull(supply);
    Objects.requireNonNull(offcut);
    cuts = List.copyOf(cuts);
    offcutNames = List.copyOf(offcutNames);
    if (times < 1) {
      throw new IllegalArgumentException("ticket " + ticket + ": " + times + " times");
    }
  }
}

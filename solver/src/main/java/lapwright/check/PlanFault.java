package lapwright.check;

import java.util.Objects;

/**
 * One rule that a plan breaks, and where.
 *
 * @param material id of the material; empty when the plan as a whole is meant
 * @param ticket name of the ticket; empty when the material as a whole is meant
 * @param expected what the shop's data asks for, in words
 * @param found what the plan says
 */
public record PlanFault(String material, String ticket, Rule rule, String expected, String found) {
  public PlanFault {
    Objects.requireNonNull(material);
    Objects.requireNonNull(ticket);
    Objects.requireNonNull(rule);
    Objects.requireNonNull(expected);
    Objects.requireNonNull(found);
  }

  /** The fault in one line. */
  public String message() {
    StringBuilder line = new StringBuilder();
    if (!material.isEmpty()) {
      line.append(material);
      line.append(ticket.isEmpty() ? ": " : ", ticket " + ticket + ": ");
    }
    return line.append(rule.statement())
        .append("; expected ")
        .append(expected)
        .append(", found ")
        .append(found)
        .toString();
  }
}

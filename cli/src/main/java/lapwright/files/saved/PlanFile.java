package lapwright.files.saved;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import lapwright.compare.JointChoice;
import lapwright.compare.Saving;
import lapwright.files.source.FileText;
import lapwright.files.source.Findings;
import lapwright.files.source.Node;
import lapwright.files.source.TreeReader;
import lapwright.paperwork.Deliveries;
import lapwright.plan.OrderPlan;
import org.jspecify.annotations.Nullable;

/**
 * plan.json. The same plan gives the same text, byte for byte; lengths and money are exact decimal
 * numbers.
 */
public final class PlanFile {
  public static final String NAME = "plan.json";

  /** Raised when older programs could not read the file any more. */
  static final int FORMAT = 2;

  private static final int ID_LENGTH = 12;

  private PlanFile() {}

  /**
   * The text of the file.
   *
   * @param inputs digests of the files that the plan was made from, by path
   * @param saving what combining saved; null when that was not asked
   */
  public static String text(OrderPlan plan, Map<String, String> inputs, @Nullable Saving saving) {
    return text(List.of(plan), inputs, saving);
  }

  /**
   * The text of the file that holds several orders, placed one after the other.
   *
   * @param orders at least one
   * @param saving what combining saved in the first; null when that was not asked
   */
  public static String text(
      List<OrderPlan> orders, Map<String, String> inputs, @Nullable Saving saving) {
    return text(orders, inputs, saving, List.of(), null);
  }

  /**
   * The same, with what the last of the orders was held against.
   *
   * @param joints what choosing the joints of its runs was worth; empty when that was not asked
   * @param deliveries of the last order; null when that was not asked
   */
  public static String text(
      List<OrderPlan> orders,
      Map<String, String> inputs,
      @Nullable Saving saving,
      List<JointChoice.Answer> joints,
      @Nullable Deliveries deliveries) {
    return PlanWriter.write(
        orders, planId(orders), new TreeMap<>(inputs), saving, joints, deliveries);
  }

  /** Twelve letters that stand for the plan and all that it rests on. */
  public static String planId(OrderPlan plan) {
    return planId(List.of(plan));
  }

  /** The same for orders that were placed one after the other. */
  public static String planId(List<OrderPlan> orders) {
    SortedMap<String, String> noInputs = new TreeMap<>();
    byte[] bytes =
        PlanWriter.write(orders, "", noInputs, null, List.of(), null)
            .getBytes(StandardCharsets.UTF_8);
    try {
      byte[] digest = MessageDigest.getInstance("SHA-256").digest(bytes);
      return HexFormat.of().formatHex(digest).substring(0, ID_LENGTH);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  /** Reads a saved plan. */
  public static PlanReading read(Path file) {
    Findings findings = new Findings();
    Path name = file.getFileName();
    FileText text = FileText.read(file, name == null ? NAME : name.toString(), findings);
    return text == null ? new PlanReading.Faulty(findings.faults()) : read(text, findings);
  }

  /** Reads the text of a saved plan. */
  public static PlanReading read(String text) {
    return read(new FileText(NAME, text, ""), new Findings());
  }

  private static PlanReading read(FileText text, Findings findings) {
    Node root = TreeReader.readJson(text, findings);
    PlanReading.Saved saved = root == null ? null : new PlanReader(findings).read(root);
    return saved != null && findings.isSound() ? saved : new PlanReading.Faulty(findings.faults());
  }
}

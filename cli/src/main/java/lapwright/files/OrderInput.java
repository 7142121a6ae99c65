package lapwright.files;

import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import lapwright.files.shop.OtherStock;
import lapwright.files.source.Note;
import lapwright.paperwork.OrderFacts.LeftOut;
import lapwright.shop.ItemOrder;
import lapwright.shop.Job;
import lapwright.shop.MaterialOrder;
import lapwright.shop.ShopOrder;

/**
 * A sound order folder.
 *
 * @param order everything that was read, jobs of every status included
 * @param wanted names of the jobs that the command is about
 * @param leftOut the other jobs, and why
 * @param takenAsFirm wanted jobs whose status nobody wrote, by name
 * @param notes what people should know about the input
 * @param digests SHA-256 of each file that was read, by its path from the folder
 * @param offcutNames every name in rack.csv, of whatever material
 * @param otherStock stock of materials that are not planned
 */
public record OrderInput(
    ShopOrder order,
    SortedSet<String> wanted,
    List<LeftOut> leftOut,
    List<String> takenAsFirm,
    List<Note> notes,
    SortedMap<String, String> digests,
    Set<String> offcutNames,
    OtherStock otherStock) {
  public OrderInput {
    Objects.requireNonNull(order);
    wanted = Collections.unmodifiableSortedSet(new TreeSet<>(wanted));
    leftOut = List.copyOf(leftOut);
    takenAsFirm = List.copyOf(takenAsFirm);
    notes = List.copyOf(notes);
    digests = Collections.unmodifiableSortedMap(new TreeMap<>(digests));
    offcutNames = Set.copyOf(offcutNames);
    Objects.requireNonNull(otherStock);
  }

  /** The jobs that the command is about, first due first. */
  public List<Job> wantedJobs() {
    return order.jobs().stream()
        .filter(job -> wanted.contains(job.name()))
        .sorted(Job.BY_DUE_THEN_NAME)
        .toList();
  }

  /** What is to be planned. */
  public List<MaterialOrder> materialOrders() {
    return order.materialOrders(job -> wanted.contains(job.name()));
  }

  /** The counted goods that are to be had. */
  public List<ItemOrder> itemOrders() {
    return order.itemOrders(job -> wanted.contains(job.name()));
  }
}

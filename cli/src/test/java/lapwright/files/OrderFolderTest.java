package lapwright.files;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import lapwright.measure.Length;
import lapwright.paperwork.OrderFacts.LeftOut;
import lapwright.paperwork.OrderFacts.Reason;
import lapwright.shop.Ends;
import lapwright.shop.Job;
import lapwright.shop.MaterialOrder;
import lapwright.shop.Piece;
import lapwright.shop.Supply;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class OrderFolderTest {
  @TempDir Path dir;

  @Test
  void readsAWholeFolder() throws IOException {
    OrderInput input = SampleFolder.sound().read(dir);
    assertEquals(
        List.of("mill-lean-to", "ferry-canopy"),
        input.wantedJobs().stream().map(Job::name).toList());
    assertEquals(List.of(new LeftOut("chapel-barn", Reason.BID)), input.leftOut());
    Job job = input.wantedJobs().get(0);
    assertEquals(LocalDate.of(2026, 12, 4), job.due());
    assertEquals(2, job.times());
    assertEquals(
        List.of(
            new Piece("tube-2x2-14ga", "P1", Length.ofFeet(9, 6), 8, "post"),
            new Piece("tube-2x2-14ga", "B1", Length.ofFeet(3, 10), 4, "brace"),
            new Piece("angle-2x2", "", Length.ofFeet(6, 6), 6, "shelf #2")),
        job.pieces());
    MaterialOrder tube = input.materialOrders().get(0);
    assertEquals(
        List.of(
            "buy:marrowby:" + Length.ofFeet(20, 0).units() + ":1",
            "buy:marrowby:" + Length.ofFeet(24, 0).units() + ":1",
            "buy:tollgate:" + Length.ofFeet(20, 0).units() + ":1",
            "rack:R7",
            "rack:R9"),
        tube.supplies().stream().map(Supply::key).toList());
    assertEquals(Ends.ONE_MILL, tube.supplies().get(4).ends());
    assertEquals(10, input.digests().size());
  }
}

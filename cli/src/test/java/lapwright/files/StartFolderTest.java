package lapwright.files;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import lapwright.PlanResult;
import lapwright.Planner;
import lapwright.effort.Effort;
import lapwright.files.jobs.JobChoice;
import lapwright.shop.Job;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class StartFolderTest {
  @TempDir Path dir;

  @Test
  void canBePlannedAsItIs() throws IOException {
    Path folder = dir.resolve("new/shop");
    List<String> written = StartFolder.write(folder);
    var sound =
        assertInstanceOf(FolderReading.Sound.class, OrderFolder.read(folder, JobChoice.firm()));
    OrderInput input = sound.input();
    assertEquals(
        List.of("pony-shed", "wood-stores", "tool-porch"),
        input.wantedJobs().stream().map(Job::name).toList());
    assertEquals(written.size(), input.digests().size());
    Planner planner = new Planner(new MarkerNames(input.offcutNames()), 1);
    assertInstanceOf(
        PlanResult.Planned.class,
        planner.plan(
            input.order().shop(), input.materialOrders(), java.util.Map.of(), Effort.unlimited()));
  }

  @Test
  void takesAnEmptyFolderAndNoOther() throws IOException {
    Path empty = Files.createDirectory(dir.resolve("empty"));
    StartFolder.write(empty);
    assertThrows(DirectoryNotEmptyException.class, () -> StartFolder.write(empty));
    Path file = Files.writeString(dir.resolve("file"), "text");
    assertThrows(FileAlreadyExistsException.class, () -> StartFolder.write(file));
    assertEquals("text", Files.readString(file));
    try (Stream<Path> left = Files.list(dir)) {
      assertEquals(2, left.count());
    }
  }
}

package lapwright.files;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

/** A small folder with comments, to begin with: it can be planned as it is. */
public final class StartFolder {
  private static final List<String> FILES =
      List.of(
          "shop.yaml",
          "materials.yaml",
          "suppliers.yaml",
          "prices/eastgate.csv",
          "on-hand.csv",
          "rack.csv",
          "jobs/pony-shed.yaml",
          "jobs/tool-porch.csv",
          "jobs/wood-stores.yaml",
          "kits/wood-store.yaml");

  private StartFolder() {}

  /**
   * Writes the folder, all of it or nothing.
   *
   * @return the files that were written, from the folder
   * @throws IOException when something is there already that is no empty folder, or it cannot be
   *     written
   */
  public static List<String> write(Path folder) throws IOException {
    Path target = folder.toAbsolutePath().normalize();
    if (Files.exists(target)) {
      if (!Files.isDirectory(target)) {
        throw new FileAlreadyExistsException(folder.toString());
      }
      try (Stream<Path> inside = Files.list(target)) {
        if (inside.findAny().isPresent()) {
          throw new DirectoryNotEmptyException(folder.toString());
        }
      }
    }
    Path parent = Objects.requireNonNullElse(target.getParent(), target);
    Files.createDirectories(parent);
    Path draft = parent.resolve(".lapwright-" + ProcessHandle.current().pid());
    Files.createDirectory(draft);
    try {
      for (String file : FILES) {
        Path path = draft.resolve(file);
        Files.createDirectories(Objects.requireNonNull(path.getParent()));
        try (InputStream in =
            Objects.requireNonNull(StartFolder.class.getResourceAsStream("start/" + file))) {
          Files.copy(in, path);
        }
      }
      Files.deleteIfExists(target);
      Files.move(draft, target);
    } catch (IOException failed) {
      delete(draft);
      throw failed;
    }
    return FILES;
  }

  private static void delete(Path draft) throws IOException {
    List<Path> all;
    try (Stream<Path> files = Files.walk(draft)) {
      all = files.sorted(java.util.Comparator.reverseOrder()).toList();
    }
    for (Path path : all) {
      Files.deleteIfExists(path);
    }
  }
}

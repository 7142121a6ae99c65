package lapwright.files.papers;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Writes several files into a folder so that a reader finds either all the new ones or all the old
 * ones.
 *
 * <p>Each is written under a temporary name first. Then the old files step aside and the new ones
 * take their names; where one cannot (a spreadsheet holds it open), all the old ones come back.
 */
public final class WholeFolder {
  private WholeFolder() {}

  /**
   * Writes {@code texts}, by file name, in UTF-8.
   *
   * @throws IOException when it could not be done; then the folder is as before
   */
  public static void write(Path folder, Map<String, String> texts) throws IOException {
    SortedMap<String, String> inOrder = new TreeMap<>(texts);
    Deque<Undo> undo = new ArrayDeque<>();
    try {
      createFolders(folder, undo);
      for (Map.Entry<String, String> entry : inOrder.entrySet()) {
        Path temporary = temporary(folder, entry.getKey(), "new");
        undo.push(() -> Files.deleteIfExists(temporary));
        Files.write(temporary, entry.getValue().getBytes(StandardCharsets.UTF_8));
      }
      Deque<Path> oldFiles = new ArrayDeque<>();
      for (String name : inOrder.keySet()) {
        Path file = folder.resolve(name);
        if (Files.isDirectory(file)) {
          throw new IOException(file + " is a folder");
        }
        if (Files.exists(file)) {
          Path aside = temporary(folder, name, "old");
          Files.move(file, aside, StandardCopyOption.ATOMIC_MOVE);
          oldFiles.push(aside);
          undo.push(() -> Files.move(aside, file, StandardCopyOption.ATOMIC_MOVE));
        }
        Path temporary = temporary(folder, name, "new");
        Files.move(temporary, file, StandardCopyOption.ATOMIC_MOVE);
        undo.push(() -> Files.move(file, temporary, StandardCopyOption.ATOMIC_MOVE));
      }
      for (Path aside : oldFiles) {
        Files.deleteIfExists(aside);
      }
    } catch (IOException | UncheckedIOException failure) {
      for (Undo step : undo) {
        try {
          step.run();
        } catch (IOException alsoFailed) {
          failure.addSuppressed(alsoFailed);
        }
      }
      throw failure;
    }
  }

  private static void createFolders(Path folder, Deque<Undo> undo) throws IOException {
    Deque<Path> missing = new ArrayDeque<>();
    for (Path at = folder.toAbsolutePath().normalize(); at != null; at = at.getParent()) {
      if (Files.exists(at)) {
        break;
      }
      missing.push(at);
    }
    for (Path each : missing) {
      Files.createDirectory(each);
      undo.push(() -> Files.deleteIfExists(each));
    }
    if (!Files.isDirectory(folder)) {
      throw new IOException(folder + " is not a folder");
    }
  }

  private static Path temporary(Path folder, String name, String kind) {
    return folder.resolve("." + name + "." + kind + "-" + ProcessHandle.current().pid());
  }

  private interface Undo {
    void run() throws IOException;
  }
}

package lapwright.files.papers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WholeFolderTest {
  @TempDir Path temp;

  @Test
  void writesAllFilesIntoAFolderThatIsMade() throws IOException {
    Path folder = temp.resolve("a/b");

    WholeFolder.write(folder, Map.of("one.csv", "1\n", "two.csv", "½\n"));

    assertEquals(List.of("one.csv", "two.csv"), names(folder));
    assertEquals("½\n", Files.readString(folder.resolve("two.csv")));
  }

  @Test
  void replacesOldFilesAndLeavesOthersAlone() throws IOException {
    Files.writeString(temp.resolve("one.csv"), "old");
    Files.writeString(temp.resolve("mine.txt"), "mine");

    WholeFolder.write(temp, Map.of("one.csv", "new"));

    assertEquals(List.of("mine.txt", "one.csv"), names(temp));
    assertEquals("new", Files.readString(temp.resolve("one.csv")));
  }

  @Test
  void bringsTheOldFilesBackWhenOneCannotBeReplaced() throws IOException {
    Files.writeString(temp.resolve("a.csv"), "old");
    Files.createDirectory(temp.resolve("b.csv"));

    assertThrows(
        IOException.class,
        () -> WholeFolder.write(temp, Map.of("a.csv", "new", "b.csv", "new", "c.csv", "new")));

    assertEquals(List.of("a.csv", "b.csv"), names(temp));
    assertEquals("old", Files.readString(temp.resolve("a.csv")));
  }

  @Test
  void leavesNoFolderBehindWhenNothingCanBeWritten() throws IOException {
    Path folder = temp.resolve("made/deep");

    assertThrows(
        IOException.class, () -> WholeFolder.write(folder, Map.of("no/such/folder.csv", "x")));

    assertFalse(Files.exists(temp.resolve("made")));
  }

  @Test
  void refusesAFileInPlaceOfTheFolder() throws IOException {
    Path file = Files.writeString(temp.resolve("papers"), "mine");

    IOException refused =
        assertThrows(IOException.class, () -> WholeFolder.write(file, Map.of("a.csv", "x")));

    assertEquals(file + " is not a folder", refused.getMessage());
    assertEquals("mine", Files.readString(file));
  }

  private static List<String> names(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }
}

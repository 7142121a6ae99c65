package lapwright.files.source;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The files of one reading: opens them, names them as people see them, keeps their digests. */
public final class Inputs {
  private static final List<String> TREES = List.of(".yaml", ".yml", ".json");

  private final Path folder;
  private final Findings findings;
  private final SortedMap<String, String> digests = new TreeMap<>();

  public Inputs(Path folder, Findings findings) {
    this.folder = folder;
    this.findings = findings;
  }

  public Path folder() {
    return folder;
  }

  public Findings findings() {
    return findings;
  }

  public SortedMap<String, String> digests() {
    return digests;
  }

  /** The path from the folder, with forward slashes. */
  public String name(Path path) {
    String name = folder.relativize(path).normalize().toString().replace('\\', '/');
    return name.isEmpty() ? "." : name;
  }

  public @Nullable FileText text(Path path) {
    FileText text = FileText.read(path, name(path), findings);
    if (text != null) {
      digests.put(text.name(), text.sha256());
    }
    return text;
  }

  public @Nullable Node tree(Path path) {
    FileText text = text(path);
    return text == null ? null : TreeReader.read(text, findings);
  }

  public @Nullable Table table(Path path, List<String> known, List<String> required) {
    FileText text = text(path);
    return text == null ? null : Table.read(text, known, required, findings);
  }

  private static String reason(Exception e) {
    return e instanceof IOException io ? FileText.reason(io) : String.valueOf(e.getMessage());
  }

  /** The one file of this name, YAML or JSON; null when there is none. */
  public @Nullable Path treeFile(Path directory, String stem) {
    List<Path> found =
        TREES.stream().map(end -> directory.resolve(stem + end)).filter(Files::exists).toList();
    if (found.size() > 1) {
      findings.fault(
          Place.whole(name(found.get(1))),
          "",
          "",
          "there is " + found.get(0).getFileName() + " as well",
          "Keep one of the two.");
    }
    return found.isEmpty() ? null : found.get(0);
  }

  /**
   * Plain and hidden entries of a directory, by name; empty, and a fault, when it has none to read.
   */
  public List<Path> entries(Path directory) {
    try (Stream<Path> entries = Files.list(directory)) {
      return entries
          .filter(path -> !fileName(path).startsWith(".") && !fileName(path).endsWith("~"))
          .sorted()
          .toList();
    } catch (IOException | UncheckedIOException e) {
      findings.fault(
          Place.whole(name(directory)),
          "",
          "",
          "not a folder that can be read (" + reason(e) + ")",
          "Make the folder, or correct the path.");
      return List.of();
    }
  }

  public static String fileName(Path path) {
    Path name = path.getFileName();
    return name == null ? "" : name.toString();
  }

  public static String stem(Path path) {
    String name = fileName(path);
    int dot = name.lastIndexOf('.');
    return dot <= 0 ? name : name.substring(0, dot);
  }

  public static boolean isTree(Path path) {
    String name = fileName(path).toLowerCase(Locale.ROOT);
    return TREES.stream().anyMatch(name::endsWith);
  }

  public static boolean isTable(Path path) {
    return fileName(path).toLowerCase(Locale.ROOT).endsWith(".csv");
  }
}

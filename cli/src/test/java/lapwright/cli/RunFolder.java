package lapwright.cli;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

/**
 * A copy of an order folder with runs, to be changed.
 *
 * <p>{@code purlins}: five lines of 36', joined at 12' and 24' only, from 24' sticks. {@code
 * eaves}: trim of two jobs from two makers, one maker a job, with offcuts of last spring's lot.
 */
final class RunFolder {
  private final Path folder;

  private RunFolder(Path folder) {
    this.folder = folder;
  }

  static RunFolder copy(String name, Path to) throws IOException {
    Path from;
    try {
      from = Path.of(Objects.requireNonNull(RunFolder.class.getResource(name)).toURI());
    } catch (URISyntaxException e) {
      throw new IOException(e);
    }
    List<Path> files;
    try (Stream<Path> walk = Files.walk(from)) {
      files = walk.filter(Files::isRegularFile).toList();
    }
    RunFolder copy = new RunFolder(to);
    for (Path file : files) {
      copy.put(from.relativize(file).toString(), Files.readString(file));
    }
    return copy;
  }

  Path folder() {
    return folder;
  }

  RunFolder put(String file, String text) throws IOException {
    Path path = folder.resolve(file);
    Files.createDirectories(path.getParent());
    Files.writeString(path, text);
    return this;
  }

  /** Replaces a text that must be there. */
  RunFolder replace(String file, String text, String by) throws IOException {
    String old = Files.readString(folder.resolve(file));
    if (!old.contains(text)) {
      throw new IllegalArgumentException(file + " does not contain " + text);
    }
    return put(file, old.replace(text, by));
  }

  RunFolder delete(String file) throws IOException {
    Files.delete(folder.resolve(file));
    return this;
  }

  CommandRun run(String command, Object... options) {
    Object[] args = new Object[options.length + 2];
    args[0] = command;
    args[1] = folder;
    System.arraycopy(options, 0, args, 2, options.length);
    return CommandRun.of(args);
  }
}

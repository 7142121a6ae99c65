package lapwright.mip;

import com.google.ortools.Loader;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Loads OR-Tools' native libraries, once, and only when a model is made.
 *
 * <p>They come from the first folder of {@code java.library.path} that holds them; that takes some
 * 25 ms. Otherwise OR-Tools' own loader unpacks them from its jar to the temporary folder, which
 * takes half a second. Thread-safe.
 */
public final class NativeSolver {
  private static final String LIBRARY = "jniortools";
  private static final List<String> NEEDED_FIRST_ON_WINDOWS =
      List.of(
          "zlib1",
          "bz2",
          "abseil_dll",
          "re2",
          "libutf8_validity",
          "libprotobuf",
          "highs",
          "libscip",
          "ortools");

  private NativeSolver() {}

  /**
   * Makes sure that the libraries are there.
   *
   * @throws IllegalStateException when neither way works; the message says why
   */
  public static void load() {
    if (Once.FAILURE.length() > 0) {
      throw new IllegalStateException(Once.FAILURE);
    }
  }

  private static final class Once {
    static final String FAILURE = tryLoading();

    private static String tryLoading() {
      try {
        Path folder = folderInLibraryPath();
        if (folder == null) {
          Loader.loadNativeLibraries();
        } else {
          loadFrom(folder);
        }
        // The loader may return without having loaded anything; this call needs the library.
        com.google.ortools.init.OrToolsVersion.getMajorNumber();
        return "";
      } catch (UnsatisfiedLinkError | RuntimeException e) {
        return "the native solver library "
            + System.mapLibraryName(LIBRARY)
            + " could not be loaded for "
            + System.getProperty("os.name")
            + " "
            + System.getProperty("os.arch")
            + ": "
            + e.getMessage()
            + "\nPut it into a folder and start Java with -Djava.library.path=FOLDER, or free"
            + " space in "
            + System.getProperty("java.io.tmpdir");
      }
    }

    /** Windows looks for what a library needs only among those already loaded. */
    private static void loadFrom(Path folder) {
      for (String needed : NEEDED_FIRST_ON_WINDOWS) {
        Path file = folder.resolve(needed + ".dll");
        if (Files.isRegularFile(file)) {
          System.load(file.toAbsolutePath().toString());
        }
      }
      System.load(folder.resolve(System.mapLibraryName(LIBRARY)).toAbsolutePath().toString());
    }

    private static @Nullable Path folderInLibraryPath() {
      for (String folder :
          System.getProperty("java.library.path", "").split(File.pathSeparator, -1)) {
        if (!folder.isEmpty()
            && Files.isRegularFile(Path.of(folder, System.mapLibraryName(LIBRARY)))) {
          return Path.of(folder);
        }
      }
      return null;
    }
  }
}

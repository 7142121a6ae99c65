package lapwright.cli;

import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;

/** Says in words why a file could not be read or written. */
final class FileTrouble {
  private FileTrouble() {}

  static String describe(Throwable trouble) {
    Throwable cause = trouble;
    if (trouble instanceof UncheckedIOException unchecked && unchecked.getCause() != null) {
      cause = unchecked.getCause();
    }
    if (cause instanceof FileSystemException trouble2) {
      return trouble2.getFile() + ": " + reason(trouble2);
    }
    String message = cause.getMessage();
    return message == null ? cause.getClass().getSimpleName() : message;
  }

  private static String reason(FileSystemException trouble) {
    if (trouble instanceof NoSuchFileException) {
      return "there is no such file or folder.";
    }
    if (trouble instanceof AccessDeniedException) {
      return "permission denied; choose another folder, or ask who owns it.";
    }
    if (trouble instanceof NotDirectoryException) {
      return "is not a folder.";
    }
    if (trouble instanceof FileAlreadyExistsException) {
      return "is there already.";
    }
    if (trouble instanceof DirectoryNotEmptyException) {
      return "the folder is not empty.";
    }
    String reason = trouble.getReason();
    return reason == null ? "cannot be read or written." : reason;
  }
}

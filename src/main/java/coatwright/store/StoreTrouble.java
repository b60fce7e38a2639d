package coatwright.store;

import coatwright.journal.NotKept;
import java.nio.file.Path;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** The data file cannot be used. Says which file, why, and what to do about it. */
public final class StoreTrouble extends NotKept {
  private final transient Path file;

  StoreTrouble(Path file, String why, String remedy, @Nullable Throwable cause) {
    super(file + ": " + why + "; " + remedy, cause);
    this.file = file;
  }

  /** The file in trouble. */
  public Path file() {
    return file;
  }

  /** Reads the database's own error for a person. */
  static StoreTrouble of(Path file, String doing, Throwable failure) {
    if (failure instanceof StoreTrouble known) {
      return known;
    }
    for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
      if (cause instanceof SQLiteException refused) {
        return of(file, doing, refused.getResultCode(), failure);
      }
    }
    return new StoreTrouble(file, doing + " failed: " + text(failure), "see the log", failure);
  }

  private static StoreTrouble of(Path file, String doing, SQLiteErrorCode code, Throwable failure) {
    String name = code.name();
    if (name.startsWith("SQLITE_FULL")) {
      return new StoreTrouble(
          file,
          "the disk is full, " + doing + " failed",
          "make room; nothing written is lost",
          failure);
    }
    if (name.startsWith("SQLITE_BUSY") || name.startsWith("SQLITE_LOCKED")) {
      return new StoreTrouble(
          file,
          "another program holds the file, " + doing + " failed",
          "close that program",
          failure);
    }
    if (name.startsWith("SQLITE_NOTADB")) {
      return new StoreTrouble(
          file,
          "this is not a Coatwright data file",
          "name another data folder, or restore a backup",
          failure);
    }
    if (name.startsWith("SQLITE_CORRUPT")) {
      return new StoreTrouble(
          file,
          "the file is damaged, " + doing + " failed",
          "stop, copy the folder away, restore the last backup",
          failure);
    }
    if (name.startsWith("SQLITE_READONLY")
        || name.startsWith("SQLITE_CANTOPEN")
        || name.startsWith("SQLITE_PERM")
        || name.startsWith("SQLITE_AUTH")) {
      return new StoreTrouble(
          file,
          "the file cannot be opened for writing",
          "check who owns the folder and its rights",
          failure);
    }
    if (name.startsWith("SQLITE_IOERR")) {
      return new StoreTrouble(
          file, "the disk refused, " + doing + " failed", "check the disk and its cable", failure);
    }
    return new StoreTrouble(
        file, doing + " failed: " + name.toLowerCase(Locale.ROOT), "see the log", failure);
  }

  private static String text(Throwable failure) {
    String message = failure.getMessage();
    return message == null ? failure.getClass().getSimpleName() : message;
  }
}

package coatwright.journal;

import org.jspecify.annotations.Nullable;

/**
 * An entry could not be written down: the ledger's file is full, locked or gone. The message names
 * the file and the remedy; nothing was half written, so the same entry may be sent again.
 */
public class NotKept extends RuntimeException {
  protected NotKept(String message, @Nullable Throwable cause) {
    super(message, cause);
  }
}

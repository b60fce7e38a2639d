package coatwright.sensors;

import java.util.List;
import java.util.Optional;

/** A payload taken apart by its form, or the reason it could not be. */
sealed interface Opened {
  /**
   * Records found.
   *
   * @param flags oddities that do not spoil them
   * @param heldBecause a sentence when the payload was mended to be read, so that its values are
   *     shown but not believed; empty otherwise
   * @param otherwise how a wrongly set sender would be read, to name the mistake and never to
   *     believe it
   */
  record Parts(List<Cells> cells, List<String> flags, String heldBecause, List<Otherwise> otherwise)
      implements Opened {
    Parts(List<Cells> cells) {
      this(cells, List.of(), "");
    }

    Parts(List<Cells> cells, List<String> flags, String heldBecause) {
      this(cells, flags, heldBecause, List.of());
    }

    public Parts {
      cells = List.copyOf(cells);
      flags = List.copyOf(flags);
      otherwise = List.copyOf(otherwise);
    }
  }

  /**
   * The same payload under another suspicion.
   *
   * @param suspicion what would have to be wrong, like "bytes swapped inside the registers"
   */
  record Otherwise(String suspicion, Cells cells) {}

  /**
   * Not a payload of this form.
   *
   * @param harmless true of what every healthy sender says now and then, such as a header line
   * @param present what it said about the node being there, if that is what it said
   */
  record No(String reason, boolean harmless, Optional<Boolean> present) implements Opened {
    No(String reason) {
      this(reason, false);
    }

    No(String reason, boolean harmless) {
      this(reason, harmless, Optional.empty());
    }
  }
}

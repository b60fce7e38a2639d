package coatwright.sensors;

import java.util.List;

/** A payload taken apart by its form, or the reason it could not be. */
sealed interface Opened {
  /**
   * Records found.
   *
   * @param flags oddities that do not spoil them
   * @param heldBecause a sentence when the payload was mended to be read, so that its values are
   *     shown but not believed; empty otherwise
   */
  record Parts(List<Cells> cells, List<String> flags, String heldBecause) implements Opened {
    Parts(List<Cells> cells) {
      this(cells, List.of(), "");
    }

    public Parts {
      cells = List.copyOf(cells);
      flags = List.copyOf(flags);
    }
  }

  /**
   * Not a payload of this form.
   *
   * @param harmless true of what every healthy sender says now and then, such as a header line
   */
  record No(String reason, boolean harmless) implements Opened {
    No(String reason) {
      this(reason, false);
    }
  }
}

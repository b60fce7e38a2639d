package coatwright.film;

import java.util.Locale;

/** Where a figure of a finish comes from. */
public enum Basis {
  /** Printed somewhere that can be named, or stated by data sheets. */
  PUBLISHED,
  /** Set so that the model gives what finishers see; common practice, no source. */
  CALIBRATED,
  /** Nobody measured it; shown as an estimate. */
  ASSUMED,
  /** From the product's own data sheet, as the person wrote it into the file. */
  DATA_SHEET;

  /** Whether what rests on it is shown as an estimate. */
  public boolean estimate() {
    return this == ASSUMED;
  }

  /** The word a finish file writes: {@code data-sheet}. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}

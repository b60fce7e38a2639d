package coatwright.sensors;

import java.util.Locale;

/** The form a payload has. */
public enum PayloadKind {
  NUMBER,
  JSON,
  PATTERN,
  COLUMNS;

  /** The word used in settings. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}

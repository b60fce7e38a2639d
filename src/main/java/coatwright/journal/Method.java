package coatwright.journal;

import java.util.Locale;

/** How a coat goes on; the verb on screen. */
public enum Method {
  BRUSH,
  PAD,
  WIPE,
  SPRAY;

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}

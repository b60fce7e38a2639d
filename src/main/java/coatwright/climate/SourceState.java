package coatwright.climate;

import java.util.Locale;

/** How fresh a source is. {@code REFUSED}: it speaks, but nothing it says can be believed. */
public enum SourceState {
  WAITING,
  CURRENT,
  LATE,
  STALE,
  LOST,
  REFUSED;

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}

package coatwright.film;

import java.util.Locale;

/** What a film becomes, in the order it does; terms of ISO 9117 and ASTM D1640, and the trade's. */
public enum Milestone {
  DRY_TO_TOUCH,
  DRY_TO_RECOAT,
  RESTED,
  DRY_HARD,
  RUB_OUT,
  WRAP,
  FULL_HARDNESS;

  /** Counted by the film's own clock: these lie days ahead and the nights between count. */
  boolean byFilmClock() {
    return compareTo(DRY_HARD) >= 0;
  }

  /** Its place among the features of a run; lives in memory only. */
  @SuppressWarnings("EnumOrdinal")
  int index() {
    return ordinal();
  }

  /** The words of the trade: {@code rub out}. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}

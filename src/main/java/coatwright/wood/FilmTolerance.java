package coatwright.wood;

import coatwright.quantity.OutOfRange;

/**
 * How far a dry film can be stretched.
 *
 * @param yieldPct stretch from which on it does not go back, %, above 0 to 100
 * @param breakPct stretch at which it parts, %, from the yield to 100
 * @param assumed taken from other films, not measured on this one
 */
public record FilmTolerance(double yieldPct, double breakPct, boolean assumed) {
  /**
   * What is assumed of an old, brittle film: it yields at 0.4 % and breaks at 0.9 %.
   *
   * <p>Source: measured on paints, glues and woods between 35 and 65 % humidity and used for panel
   * paintings by Richard, Mecklenburg and Tumosa in "The Structural Conservation of Panel
   * Paintings" (Getty Conservation Institute, 1998). That a shellac film is like them is assumed: a
   * fresh one is tougher (3.8 % to break in a puncture test, Soradech et al., Journal of Food
   * Engineering 108 (2012) 94), and age takes that away.
   */
  public static final FilmTolerance BRITTLE = new FilmTolerance(0.4, 0.9, true);

  public FilmTolerance {
    OutOfRange.check("yield of the film", yieldPct, "%", 0.01, 100);
    OutOfRange.check("break of the film", breakPct, "%", yieldPct, 100);
  }
}

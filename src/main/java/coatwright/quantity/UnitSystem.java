package coatwright.quantity;

/** The units a shop reads on its screens. What it types always carries its own unit. */
public enum UnitSystem {
  /** °F, mil, US gallon and its parts, pounds cut per US gallon, feet. */
  US,
  /** °C, µm, litres, grams per litre, metres. */
  METRIC,
  /** °C, mil, imperial gallon and its parts, pounds cut per imperial gallon, feet. */
  IMPERIAL
}

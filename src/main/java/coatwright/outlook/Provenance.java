package coatwright.outlook;

/**
 * Where one input of a film job came from.
 *
 * @param input what it is: {@code wood temperature}, {@code cut}
 * @param value with its unit, as people read it
 * @param from who or what says so: {@code told with the jar}, {@code the finish's usual}
 * @param assumed true when nobody measured or told it
 */
public record Provenance(String input, String value, String from, boolean assumed) {
  /** {@code cut 1.5 lb (180 g/L): the finish's usual}. */
  public String sentence() {
    return input + " " + value + ": " + from;
  }
}

package coatwright.film;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * A finish as data: what its file in {@code config/finishes} says.
 *
 * @param name the file's name, such as {@code shellac-pale}
 * @param title the name people read
 * @param drying how it hardens: the family, its model and what is assumed of a jar
 * @param referenceTempC air its usual drying is judged against, °C
 * @param referenceRhPct the same, per cent RH
 * @param wetFilmUmByMethod usual wet film by method word ({@code brush} …), µm
 * @param wetFilmLnSd spread of that assumption, natural log
 * @param lowestTempC stated lower limit of air and wood, °C
 * @param highestTempC stated upper limit, °C
 * @param recoatUntilMin late end of the recoat window, minutes; empty = no late end
 * @param testDueMonths age of a mixed jar at which its drop test is due, months
 * @param buildLimitUm dry build beyond which it is likely to craze later, µm
 * @param waxNote what it says of wax
 * @param mayGoOver what it may be laid over
 * @param mayGoUnder what may be laid over it
 * @param basis where the figures come from, a line each
 * @param cautions the usual cautions, a sentence each
 */
public record Finish(
    String name,
    String title,
    Drying drying,
    double referenceTempC,
    double referenceRhPct,
    Map<String, Double> wetFilmUmByMethod,
    double wetFilmLnSd,
    double lowestTempC,
    double highestTempC,
    OptionalDouble recoatUntilMin,
    int testDueMonths,
    double buildLimitUm,
    String waxNote,
    List<String> mayGoOver,
    List<String> mayGoUnder,
    List<String> basis,
    List<String> cautions) {
  public Finish {
    wetFilmUmByMethod = Map.copyOf(wetFilmUmByMethod);
    mayGoOver = List.copyOf(mayGoOver);
    mayGoUnder = List.copyOf(mayGoUnder);
    basis = List.copyOf(basis);
    cautions = List.copyOf(cautions);
  }

  /** The family's word. */
  public String family() {
    return drying.family();
  }
}

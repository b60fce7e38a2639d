package coatwright.film;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * A finish as data: what its file in {@code config/finishes} says.
 *
 * @param name the file's name, such as {@code shellac-pale}
 * @param title the name people read
 * @param layer what it is to the finishes over and under it
 * @param drying how it hardens: the family, its model and what is assumed of a jar
 * @param referenceTempC air its usual drying is judged against, °C
 * @param referenceRhPct the same, per cent RH
 * @param wetFilmUmByMethod usual wet film by method word ({@code brush} …), µm
 * @param wetFilmLnSd spread of that assumption, natural log
 * @param lowestTempC stated lower limit of air and wood, °C
 * @param highestTempC stated upper limit, °C
 * @param recoatUntilMin late end of the recoat window, minutes in the reference air at the usual
 *     brushed film; empty = no late end
 * @param testDueMonths age of a mixed or opened jar at which it is to be tested, months
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
    Layer layer,
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
    List<Layer> mayGoOver,
    List<Layer> mayGoUnder,
    List<String> basis,
    List<String> cautions) {
  public Finish {
    wetFilmUmByMethod = Map.copyOf(wetFilmUmByMethod);
    mayGoOver = List.copyOf(mayGoOver);
    mayGoUnder = List.copyOf(mayGoUnder);
    basis = List.copyOf(basis);
    cautions = List.copyOf(cautions);
  }

  /**
   * Where the figure under a key of its file is from; what is assumed is shown as an estimate. The
   * milestones go by {@code touch}, {@code recoat}, {@code sand}, {@code rub-out}, {@code wrap} and
   * {@code full-hardness}.
   */
  public Basis basisOf(String key) {
    return drying.basisOf(key);
  }

  /** Where a milestone's threshold is from; assumed where files do not set it. */
  public Basis basisOf(Milestone milestone) {
    String key = Curing.keys().get(milestone);
    return key == null ? Basis.ASSUMED : basisOf(key);
  }

  /** The family's word. */
  public String family() {
    return drying.family();
  }
}

package coatwright.film;

/**
 * The film at one asked-for moment.
 *
 * @param atS on the job's clock
 * @param filmTempC the film, °C
 * @param woodSurfaceC the wood under it, °C
 * @param airTempC the room, °C
 * @param xMeanK softness of the whole stack: air temperature less its glass transition, K
 * @param ethanol volume of spirit per volume of resin, mean of the stack; of a lacquer, all its
 *     solvents together
 * @param water the same for water
 * @param retarder the same for 2-butoxyethanol in spirit; 0 for a lacquer, whose solvents are
 *     counted together
 * @param tgMeanC glass transition of the stack's mean composition, °C
 * @param tgSkinC glass transition of the mean composition of the top micrometre of resin, °C
 * @param tgBottomC glass transition of the lowest cell, °C
 * @param tgNewestC glass transition of the newest coat's mean composition, °C
 * @param sTop blush number of the top cell
 * @param sLargest largest blush number in the newest coat
 * @param sNewest resin-weighted mean blush number of the newest coat
 * @param hazeMean resin-weighted haze of the stack, 0 when haze is not followed
 * @param hazeLargest largest haze of any cell, 0 when haze is not followed
 */
public record FilmSample(
    double atS,
    double filmTempC,
    double woodSurfaceC,
    double airTempC,
    double xMeanK,
    double ethanol,
    double water,
    double retarder,
    double tgMeanC,
    double tgSkinC,
    double tgBottomC,
    double tgNewestC,
    double sTop,
    double sLargest,
    double sNewest,
    double hazeMean,
    double hazeLargest) {

  /** What must still leave before the film is hard: spirit and retarder per volume of resin. */
  public double residue() {
    return ethanol + retarder;
  }
}

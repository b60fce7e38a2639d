package coatwright.film;

import coatwright.air.SaturationFunction;
import coatwright.quantity.OutOfRange;
import java.util.List;

/**
 * What is to be computed: the coats on one face, the air they meet, and the wood under them.
 *
 * @param coats at least one, at most 40, each later than the one before
 * @param air the room's air on the same clock
 * @param woodTempC temperature of the whole board when the first coat goes on, °C, −5 to 45
 * @param boardThicknessMm 2 to 200 mm; the back of the board is taken as insulated
 * @param saturation the one vapour-pressure function of room, film and dew point
 */
public record FilmJob(
    List<LaidCoat> coats,
    AirCourse air,
    double woodTempC,
    double boardThicknessMm,
    SaturationFunction saturation) {

  /** The board the reference runs used, mm. */
  public static final double USUAL_BOARD_MM = 18;

  static final int MOST_COATS = 40;

  public FilmJob {
    coats = List.copyOf(coats);
    if (coats.isEmpty() || coats.size() > MOST_COATS) {
      throw new IllegalArgumentException(
          "a film needs 1 to %d coats, got %d".formatted(MOST_COATS, coats.size()));
    }
    for (int i = 1; i < coats.size(); i++) {
      if (coats.get(i).atS() < coats.get(i - 1).atS() + 1) {
        throw new IllegalArgumentException(
            "coat %d must go on at least 1 s after coat %d".formatted(i + 1, i));
      }
    }
    OutOfRange.check("wood temperature", woodTempC, "°C", -5, 45);
    OutOfRange.check("board thickness", boardThicknessMm, "mm", 2, 200);
  }

  /** Over liquid water by Hyland and Wexler, the function of the whole product. */
  public static FilmJob of(List<LaidCoat> coats, AirCourse air, double woodTempC) {
    return new FilmJob(
        coats, air, woodTempC, USUAL_BOARD_MM, SaturationFunction.HYLAND_WEXLER_WATER);
  }
}

package coatwright.film;

import coatwright.quantity.OutOfRange;

/**
 * The air and the coat at the moment of coating.
 *
 * @param airTempC °C, −5 to 45
 * @param rhPct per cent RH, 3 to 100
 * @param woodTempC °C, −5 to 60
 * @param draughtMPerS m/s, 0 to 3
 * @param wetFilmUm µm, 1 to 1000
 * @param reducedPct thinner or water added, per cent of the finish by volume, 0 to 300
 * @param airExchange whether the room is aired
 */
public record CureMoment(
    double airTempC,
    double rhPct,
    double woodTempC,
    double draughtMPerS,
    double wetFilmUm,
    double reducedPct,
    AirExchange airExchange) {

  /** Whether fresh air comes into the room. */
  public enum AirExchange {
    YES,
    NO,
    UNKNOWN
  }

  public CureMoment {
    OutOfRange.check("air temperature", airTempC, "°C", -5, 45);
    OutOfRange.check("relative humidity", rhPct, "%", 3, 100);
    OutOfRange.check("wood temperature", woodTempC, "°C", -5, 60);
    OutOfRange.check("draught", draughtMPerS, "m/s", 0, 3);
    OutOfRange.check("wet film", wetFilmUm, "µm", 1, 1000);
    OutOfRange.check("thinner added", reducedPct, "% by volume", 0, 300);
  }

  /** An unthinned coat in the usual draught of a room, 0.1 m/s, nothing known of its airing. */
  public static CureMoment of(double airTempC, double rhPct, double woodTempC, double wetFilmUm) {
    return new CureMoment(airTempC, rhPct, woodTempC, 0.1, wetFilmUm, 0, AirExchange.UNKNOWN);
  }

  CureJob job(Curing curing) {
    return new CureJob(
        curing,
        java.util.List.of(new CureCoat(0, wetFilmUm, reducedPct)),
        AirCourse.steady(airTempC, rhPct / 100, draughtMPerS),
        woodTempC,
        Spreads.told(0, 0),
        java.util.List.of(),
        0,
        java.util.List.of(),
        0);
  }
}

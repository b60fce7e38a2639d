package coatwright.outlook;

import coatwright.air.MoistAir;
import coatwright.film.AirCourse;
import coatwright.film.CureJob;
import coatwright.film.CureMoment;

/** The same coating in a room warmed without drying it: its vapour stays, its humidity falls. */
final class CureWarmer {
  private CureWarmer() {}

  static CureCoating by(CureCoating c, double byK) {
    double tempC = c.air().airTempC() + byK;
    double rhPct =
        Math.max(
            3,
            100
                * c.air().vapourPressurePa()
                / new MoistAir(tempC, 100, c.air().pressurePa()).vapourPressurePa());
    double woodC = c.woodTempC() + byK;
    CureMoment m = c.moment();
    AirCourse air = AirCourse.steady(tempC, rhPct / 100, m.draughtMPerS());
    CureJob j = c.job();
    return new CureCoating(
        c.finish(),
        c.curing(),
        new MoistAir(tempC, rhPct, c.air().pressurePa()),
        c.airTempErrorK(),
        c.rhErrorPct(),
        woodC,
        c.woodErrorK(),
        new CureJob(
            c.curing(),
            j.coats(),
            air,
            woodC,
            j.spreads(),
            j.tests(),
            j.nowS(),
            j.gaps(),
            j.gapK()),
        new CureMoment(
            tempC, rhPct, woodC, m.draughtMPerS(), m.wetFilmUm(), m.reducedPct(), m.airExchange()),
        c.shop(),
        c.method(),
        c.assumptions());
  }
}

package coatwright.film;

import coatwright.quantity.OutOfRange;
import coatwright.solvent.Solvent;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One coat as it left the brush.
 *
 * @param atS seconds on the job's own clock
 * @param wetFilmUm wet thickness, µm, 10 to 300
 * @param poured what it is made of
 * @param liquidTempC temperature of the liquid, °C, 0 to 45; absent means the air's
 */
public record LaidCoat(double atS, double wetFilmUm, Poured poured, OptionalDouble liquidTempC) {

  public LaidCoat {
    OutOfRange.check("time of the coat", atS, "s", -1e10, 1e10);
    OutOfRange.check("wet film", wetFilmUm, "µm", 10, 300);
    if (liquidTempC.isPresent()) {
      OutOfRange.check("liquid temperature", liquidTempC.getAsDouble(), "°C", 0, 45);
    }
  }

  /**
   * A coat of resin in spirit.
   *
   * @param cutGPerL dry flakes per litre of spirit, g/L, 20 to 600
   * @param strengthVolPct spirit by volume in the solvent, %, 80 to 99.95
   * @param retarderVolPct 2-butoxyethanol by volume of the solvent, %, 0 to 10; no other is known
   *     to the model
   */
  public LaidCoat(
      double atS,
      double wetFilmUm,
      double cutGPerL,
      double strengthVolPct,
      double retarderVolPct,
      OptionalDouble liquidTempC) {
    this(atS, wetFilmUm, new Poured.Spirit(cutGPerL, strengthVolPct, retarderVolPct), liquidTempC);
  }

  /** A coat of spirit without retarder, at the air's temperature. */
  public static LaidCoat plain(
      double atS, double wetFilmUm, double cutGPerL, double strengthVolPct) {
    return new LaidCoat(atS, wetFilmUm, cutGPerL, strengthVolPct, 0, OptionalDouble.empty());
  }

  /**
   * A coat of lacquer at the air's temperature, thinned with its own blend.
   *
   * @param solidsVolPct resin by volume in the lacquer before thinning, %, 3 to 60
   * @param thinnerVolPct thinner by volume in what is laid, %, 0 to 80
   */
  public static LaidCoat lacquer(
      double atS, double wetFilmUm, double solidsVolPct, LacquerBlend blend, double thinnerVolPct) {
    return new LaidCoat(
        atS,
        wetFilmUm,
        new Poured.Lacquer(solidsVolPct, blend, thinnerVolPct, blend),
        OptionalDouble.empty());
  }

  /** The same coat laid at another time. */
  public LaidCoat at(double newAtS) {
    return new LaidCoat(newAtS, wetFilmUm, poured, liquidTempC);
  }

  /** The same liquid laid thicker or thinner, µm. */
  public LaidCoat withWetFilm(double newWetFilmUm) {
    return new LaidCoat(atS, newWetFilmUm, poured, liquidTempC);
  }

  /**
   * The same coat with so many times the resin: of the cut in spirit, of the solids in lacquer.
   *
   * @throws OutOfRange where that leaves the range of a jar
   */
  public LaidCoat withResinTimes(double factor) {
    return new LaidCoat(atS, wetFilmUm, poured.withResinTimes(factor), liquidTempC);
  }

  /** The same coat with stronger spirit, by so many points; a lacquer as it is. */
  LaidCoat withStrengthMoved(double points) {
    return poured instanceof Poured.Spirit s
        ? new LaidCoat(
            atS,
            wetFilmUm,
            new Poured.Spirit(s.cutGPerL(), s.strengthVolPct() + points, s.retarderVolPct()),
            liquidTempC)
        : this;
  }

  /** Whether it is resin in spirit; only then do cut, strength and retarder mean anything. */
  public boolean isSpirit() {
    return poured instanceof Poured.Spirit;
  }

  /** Whether it holds 2-butoxyethanol, in spirit as a retarder or in a slow blend. */
  public boolean holdsButoxyethanol() {
    return poured.perResin(Solvent.BUTOXYETHANOL) > 0;
  }

  /** The same coat carried by another blend; empty for what is no lacquer. */
  public Optional<LaidCoat> withBlend(LacquerBlend blend) {
    return poured instanceof Poured.Lacquer l
        ? Optional.of(
            new LaidCoat(
                atS,
                wetFilmUm,
                new Poured.Lacquer(l.solidsVolPct(), blend, l.thinnerVolPct(), blend),
                liquidTempC))
        : Optional.empty();
  }

  /** Dry flakes per litre of spirit, g/L. */
  public double cutGPerL() {
    return spirit("cut").cutGPerL();
  }

  /** Spirit by volume in the solvent, %. */
  public double strengthVolPct() {
    return spirit("spirit strength").strengthVolPct();
  }

  /** 2-butoxyethanol by volume of the solvent, %. */
  public double retarderVolPct() {
    return spirit("retarder").retarderVolPct();
  }

  private Poured.Spirit spirit(String asked) {
    if (poured instanceof Poured.Spirit s) {
      return s;
    }
    throw new IllegalStateException("a coat of lacquer has no " + asked);
  }

  /** Thickness of its resin alone, µm. */
  public double dryFilmUm() {
    return wetFilmUm * poured.solidsFraction();
  }
}

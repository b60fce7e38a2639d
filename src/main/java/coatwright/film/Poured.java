package coatwright.film;

import coatwright.mix.FilmBuild;
import coatwright.quantity.OutOfRange;
import coatwright.solvent.Solvent;
import java.util.List;
import java.util.stream.Stream;

/** The liquid of a coat as it left the brush or gun. Volumes of liquids and resin are added. */
public sealed interface Poured {

  /** Volume share of resin, above 0 and below 1. */
  double solidsFraction();

  /** Volume of one liquid per volume of resin; 0 where it holds none. */
  double perResin(Solvent liquid);

  /** Every solvent in it, water left out. */
  List<Solvent> solvents();

  /**
   * The same with so many times the resin: of the cut in spirit, of the solids in lacquer.
   *
   * @throws OutOfRange where that leaves the range of a jar
   */
  Poured withResinTimes(double factor);

  /** A liquid that is a quarter solids, or nearly, has no open time to speak of. */
  boolean hasOpenTime();

  /**
   * Shellac in spirit.
   *
   * @param cutGPerL dry flakes per litre of spirit, g/L, 20 to 600
   * @param strengthVolPct spirit by volume in the solvent, %, 80 to 99.95
   * @param retarderVolPct 2-butoxyethanol by volume of the solvent, %, 0 to 10
   */
  record Spirit(double cutGPerL, double strengthVolPct, double retarderVolPct) implements Poured {
    public Spirit {
      OutOfRange.check("cut", cutGPerL, "g/L", 20, 600);
      OutOfRange.check("spirit strength", strengthVolPct, "% vol", 80, 99.95);
      OutOfRange.check("2-butoxyethanol", retarderVolPct, "% vol", 0, 10);
    }

    @Override
    public double solidsFraction() {
      return FilmBuild.solidsFraction(cutGPerL);
    }

    @Override
    public double perResin(Solvent liquid) {
      double solids = solidsFraction();
      double all = (1 - solids) / solids;
      double retarder = retarderVolPct / 100;
      double strength = strengthVolPct / 100;
      if (liquid.equals(Solvent.ETHANOL)) {
        return all * strength * (1 - retarder);
      }
      if (liquid.equals(Solvent.WATER)) {
        return all * (1 - strength) * (1 - retarder);
      }
      return liquid.equals(Solvent.BUTOXYETHANOL) ? all * retarder : 0;
    }

    @Override
    public List<Solvent> solvents() {
      return retarderVolPct > 0
          ? List.of(Solvent.ETHANOL, Solvent.BUTOXYETHANOL)
          : List.of(Solvent.ETHANOL);
    }

    @Override
    public Spirit withResinTimes(double factor) {
      return new Spirit(cutGPerL * factor, strengthVolPct, retarderVolPct);
    }

    @Override
    public boolean hasOpenTime() {
      return cutGPerL <= CoatOutcome.OPEN_TIME_LIMIT_G_PER_L;
    }
  }

  /**
   * Lacquer, thinned or not.
   *
   * @param solidsVolPct resin by volume in the lacquer before thinning, %, 3 to 60
   * @param blend what carries it in the can
   * @param thinnerVolPct thinner by volume in what is laid, %, 0 to 80
   * @param thinner what it was thinned with; of no account at 0 %
   */
  record Lacquer(
      double solidsVolPct, LacquerBlend blend, double thinnerVolPct, LacquerBlend thinner)
      implements Poured {
    /**
     * Water in the liquid as poured, by volume of all liquids: a trace, so that it has a beginning.
     * Assumed.
     */
    public static final double WATER_SHARE = 1e-4;

    public Lacquer {
      OutOfRange.check("solids by volume", solidsVolPct, "%", 3, 60);
      OutOfRange.check("thinner", thinnerVolPct, "% vol", 0, 80);
    }

    @Override
    public double solidsFraction() {
      return solidsVolPct / 100 * (1 - thinnerVolPct / 100);
    }

    @Override
    public double perResin(Solvent liquid) {
      double thinned = thinnerVolPct / 100;
      double resin = solidsFraction();
      double can = (1 - thinned) * (1 - solidsVolPct / 100);
      if (liquid.equals(Solvent.WATER)) {
        return (can + thinned) * WATER_SHARE / resin;
      }
      return (can * blend.share(liquid) + thinned * thinner.share(liquid)) / resin;
    }

    @Override
    public List<Solvent> solvents() {
      return Stream.of(blend, thinner)
          .flatMap(b -> b.parts().stream())
          .map(LacquerBlend.Part::solvent)
          .filter(s -> perResin(s) > 0)
          .distinct()
          .toList();
    }

    @Override
    public Lacquer withResinTimes(double factor) {
      return new Lacquer(solidsVolPct * factor, blend, thinnerVolPct, thinner);
    }

    @Override
    public boolean hasOpenTime() {
      return solidsFraction() < MilestoneTracker.OPEN_SOLIDS;
    }
  }
}

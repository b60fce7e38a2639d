package coatwright.mix;

import coatwright.quantity.OutOfRange;

/**
 * The dried-sample test: weigh a little of the mixture, let it dry right out, weigh what stayed.
 *
 * <p>NV = 100 (m2 − m0)/(m1 − m0), with the empty dish m0, the dish with the wet sample m1 and with
 * the residue m2: the principle of ISO 3251 (formula from memory; the standard's own conditions of
 * temperature and time are not claimed). Spirit that has stayed in the residue counts as resin, so
 * the answer errs on the thick side.
 *
 * @param wetG sample before, g, 0.05 to 10 kg
 * @param dryG residue, g, from 0 to 55 % of the sample
 */
public record DriedSample(double wetG, double dryG) {
  public DriedSample {
    OutOfRange.check("wet sample", wetG, "g", 0.05, 10_000);
    OutOfRange.check("residue", dryG, "g", 0, 0.55 * wetG);
  }

  /** From the three weighings of a dish, g: empty, with the wet sample, with the residue. */
  public static DriedSample inDish(double emptyG, double withWetG, double withDryG) {
    OutOfRange.check("empty dish", emptyG, "g", 0, 100_000);
    return new DriedSample(withWetG - emptyG, withDryG - emptyG);
  }

  /** Resin by weight of the mixture, per cent. */
  public double solidsMassPct() {
    return 100 * dryG / wetG;
  }

  /** The cut, of spirit of that strength (% vol). */
  public Cut cut(double strengthVolPct) {
    return Cut.ofSolidsMassPct(solidsMassPct(), strengthVolPct);
  }

  /**
   * How far the scale alone may have put the cut wrong, g/L: both weighings off by one step, the
   * one up and the other down.
   *
   * @param stepG smallest step the scale shows, g, 0 to a tenth of the sample
   */
  public double cutErrorGPerL(double stepG, double strengthVolPct) {
    OutOfRange.check("step of the scale", stepG, "g", 0, wetG / 10);
    double share = Math.min(55, 100 * (dryG + stepG) / (wetG - stepG));
    return Cut.ofSolidsMassPct(share, strengthVolPct).gPerL() - cut(strengthVolPct).gPerL();
  }
}

package coatwright.config;

import coatwright.film.Drying;
import coatwright.film.FilmParameters;
import coatwright.film.LacquerBlend;
import coatwright.film.LacquerDrying;
import coatwright.quantity.OutOfRange;
import coatwright.quantity.Quantities;
import java.util.List;

/** Resin in a blend of solvents. */
final class LacquerReader implements DryingReader {
  private static final double SOLIDS_PCT = 20;
  private static final double SOLIDS_LN_SD = 0.15;

  @Override
  public Drying read(Section file, ReferenceAir reference, BasisReader basis) {
    basis.know("drying-set", "blend", "solids", "solids-spread", "recoat-until");
    file.choice("drying-set", "lacquer", List.of("lacquer"));
    LacquerBlend blend =
        LacquerBlend.named(
                file.choice(
                    "blend", "regular", LacquerBlend.ALL.stream().map(LacquerBlend::name).toList()))
            .orElse(LacquerBlend.REGULAR);
    double solidsPct = file.quantity("solids", SOLIDS_PCT, Quantities::volumeFractionPct);
    double lnSd = file.number("solids-spread", SOLIDS_LN_SD, 0, 2);
    try {
      return new LacquerDrying(FilmParameters.LACQUER, blend, solidsPct, lnSd);
    } catch (OutOfRange outside) {
      file.fault("solids", String.valueOf(outside.getMessage()), "change it");
      return new LacquerDrying(FilmParameters.LACQUER, blend, SOLIDS_PCT, lnSd);
    }
  }

  @Override
  public String usualLayer() {
    return "lacquer";
  }
}

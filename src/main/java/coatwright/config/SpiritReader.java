package coatwright.config;

import coatwright.film.Drying;
import coatwright.film.FilmParameters;
import coatwright.film.SpiritDrying;
import coatwright.quantity.OutOfRange;
import coatwright.quantity.Quantities;
import java.util.List;

/** Resin in spirit. */
final class SpiritReader implements DryingReader {
  @Override
  public Drying read(Section file, ReferenceAir reference, BasisReader basis) {
    basis.know("drying-set", "usual-cut", "cut-spread", "spirit-strength", "recoat-until");
    file.choice("drying-set", "shellac", List.of("shellac"));
    boolean told = !file.needed("usual-cut", "1.5lb").isEmpty();
    double cutGPerL = told ? file.quantity("usual-cut", 180.0, Quantities::cutGPerL) : 180;
    double cutLnSd = file.number("cut-spread", 0.2, 0, 2);
    double strengthVolPct = file.quantity("spirit-strength", 95.0, Quantities::volumeFractionPct);
    try {
      return new SpiritDrying(FilmParameters.SHELLAC, cutGPerL, cutLnSd, strengthVolPct);
    } catch (OutOfRange outside) {
      file.fault(
          "usual-cut", String.valueOf(outside.getMessage()), "change it, or spirit-strength");
      return new SpiritDrying(FilmParameters.SHELLAC, 180, cutLnSd, 95);
    }
  }

  @Override
  public String usualLayer() {
    return "shellac";
  }
}

package coatwright.film;

import coatwright.quantity.OutOfRange;
import coatwright.solvent.Solvent;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** What a film is made of: its resin, and the liquids that may carry it. */
public sealed interface Medium {

  /**
   * Shellac in spirit and water, with or without 2-butoxyethanol. The interactions and speeds of
   * the three are in {@link FilmParameters.Solution} and {@link FilmParameters.Diffusion}.
   */
  record Spirit() implements Medium {}

  /**
   * A resin in a blend of solvents. Water comes from the air; its interaction and speed are those
   * of {@link FilmParameters.Solution} and {@link FilmParameters.Diffusion}.
   *
   * @param resinKgPerM3 density of the dry resin, 800 to 2000 kg/m³
   * @param resinHeatJPerKgK 500 to 4000 J/(kg K)
   * @param cloudsAboveXK a film this much softer than its glass, K, can still go white; a stiffer
   *     one cannot, 0 to 100
   * @param liquids every solvent the set knows, water left out; a coat brings some of them
   */
  record Lacquer(
      double resinKgPerM3, double resinHeatJPerKgK, double cloudsAboveXK, List<FilmLiquid> liquids)
      implements Medium {
    public Lacquer {
      liquids = List.copyOf(liquids);
      OutOfRange.check("density of the resin", resinKgPerM3, "kg/m³", 800, 2000);
      OutOfRange.check("heat capacity of the resin", resinHeatJPerKgK, "J/(kg K)", 500, 4000);
      OutOfRange.check("softness at which clouding ends", cloudsAboveXK, "K", 0, 100);
      Set<Solvent> seen = new HashSet<>();
      for (FilmLiquid liquid : liquids) {
        if (liquid.solvent().equals(Solvent.WATER) || !seen.add(liquid.solvent())) {
          throw new IllegalArgumentException(
              "each solvent of a lacquer is named once, and water not at all; got "
                  + liquid.solvent().name());
        }
      }
      if (liquids.isEmpty()) {
        throw new IllegalArgumentException("a lacquer needs at least one solvent");
      }
    }

    /** The same with water taking so many times as ill to every solvent. */
    Lacquer withWaterTimes(double factor) {
      return new Lacquer(
          resinKgPerM3,
          resinHeatJPerKgK,
          cloudsAboveXK,
          liquids.stream().map(l -> l.withWaterTimes(factor)).toList());
    }
  }
}

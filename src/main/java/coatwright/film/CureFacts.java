package coatwright.film;

import coatwright.quantity.OutOfRange;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * What every curing finish has, whatever its reaction.
 *
 * @param solidsVolPct dry film left by a wet film, per cent by volume, 2 to 100
 * @param referenceTempC air its usual drying is judged against, °C, 5 to 35
 * @param referenceRhPct the same, per cent RH, 5 to 95
 * @param coldBelowC under this it cures so slowly that it is said, °C, −5 to 30
 * @param slowBelowRatio so much of its speed in the reference air is called slow, 0.05 to 1
 * @param needsAirExchange whether it takes oxygen from the room and gives off what must leave it
 * @param wipeOffAfterMin where what was not taken up is wiped off, after how many minutes
 * @param bleedEveryMin where open pores weep afterwards, how often to wipe, minutes
 * @param basisByKey where the figure under a key of the finish file is from
 */
public record CureFacts(
    double solidsVolPct,
    double referenceTempC,
    double referenceRhPct,
    double coldBelowC,
    double slowBelowRatio,
    boolean needsAirExchange,
    OptionalDouble wipeOffAfterMin,
    OptionalDouble bleedEveryMin,
    Map<String, Basis> basisByKey) {

  public CureFacts {
    OutOfRange.check("solids", solidsVolPct, "% by volume", 2, 100);
    OutOfRange.check("reference temperature", referenceTempC, "°C", 5, 35);
    OutOfRange.check("reference humidity", referenceRhPct, "%", 5, 95);
    OutOfRange.check("cold limit", coldBelowC, "°C", -5, 30);
    OutOfRange.check("slow-cure limit", slowBelowRatio, "", 0.05, 1);
    wipeOffAfterMin.ifPresent(min -> OutOfRange.check("time to wiping off", min, "min", 0.5, 240));
    bleedEveryMin.ifPresent(min -> OutOfRange.check("time between wipings", min, "min", 1, 1440));
    basisByKey = Map.copyOf(basisByKey);
  }

  /** Where a figure is from; assumed where the file does not say. */
  public Basis basisOf(String key) {
    return basisByKey.getOrDefault(key, Basis.ASSUMED);
  }

  /** The same facts with the basis of some keys replaced. */
  CureFacts withBasis(Map<String, Basis> replaced) {
    Map<String, Basis> all = new TreeMap<>(basisByKey);
    all.putAll(replaced);
    return new CureFacts(
        solidsVolPct,
        referenceTempC,
        referenceRhPct,
        coldBelowC,
        slowBelowRatio,
        needsAirExchange,
        wipeOffAfterMin,
        bleedEveryMin,
        all);
  }

  /**
   * Dry film of a coat, µm.
   *
   * @param reducedPct thinner or water added, per cent of the finish by volume
   */
  double dryFilmUm(double wetFilmUm, double reducedPct) {
    return wetFilmUm * solidsVolPct / 100 / (1 + reducedPct / 100);
  }
}

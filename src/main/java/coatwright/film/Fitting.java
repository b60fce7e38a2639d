package coatwright.film;

import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * Thresholds moved to what a data sheet states. What it does not state is moved by the geometric
 * mean of the factors of what it does, but never past a neighbour that is stated.
 */
final class Fitting {
  static final String RECOAT_UNTIL = "recoat-until";
  static final String POT_LIFE = "pot-life";
  static final String LOWEST_FILM = "mfft";

  private final Map<Milestone, Double> defaults;
  private final Map<Milestone, Double> given = new EnumMap<>(Milestone.class);

  /**
   * @param defaults thresholds of the family as its file seeds them, in order
   */
  Fitting(Map<Milestone, Double> defaults) {
    this.defaults = defaults;
  }

  void given(Milestone milestone, double threshold) {
    given.put(milestone, threshold);
  }

  /** Geometric mean of given over seeded; 1 where nothing is given. */
  double middleFactor() {
    return given.entrySet().stream()
        .mapToDouble(g -> Math.log(g.getValue() / seeded(g.getKey())))
        .average()
        .stream()
        .map(Math::exp)
        .findFirst()
        .orElse(1);
  }

  private double seeded(Milestone milestone) {
    Double seed = defaults.get(milestone);
    if (seed == null) {
      throw new IllegalStateException("no seed for " + milestone);
    }
    return seed;
  }

  /** All thresholds, rising; those not given moved by the middle factor. */
  Map<Milestone, Double> thresholds() {
    return thresholds(middleFactor());
  }

  /** All thresholds, rising; those not given where they were. */
  Map<Milestone, Double> unmoved() {
    return thresholds(1);
  }

  private Map<Milestone, Double> thresholds(double factor) {
    Map<Milestone, Double> fitted = new EnumMap<>(Milestone.class);
    double before = 0;
    for (Map.Entry<Milestone, Double> seed : defaults.entrySet()) {
      Milestone m = seed.getKey();
      Double stated = given.get(m);
      double moved = stated != null ? stated : Math.min(nextGiven(m), seed.getValue() * factor);
      before = Math.max(before, moved);
      fitted.put(m, before);
    }
    return fitted;
  }

  private double nextGiven(Milestone after) {
    return given.entrySet().stream()
        .filter(g -> g.getKey().compareTo(after) > 0)
        .mapToDouble(Map.Entry::getValue)
        .min()
        .orElse(Double.POSITIVE_INFINITY);
  }

  /** The basis of every threshold after fitting, by the key of the file. */
  Map<String, Basis> basis(StatedTimes stated) {
    Map<String, Basis> basis = new TreeMap<>();
    for (Milestone m : defaults.keySet()) {
      basis.put(CureKeys.of(m), given.containsKey(m) ? Basis.DATA_SHEET : Basis.ASSUMED);
    }
    mark(basis, RECOAT_UNTIL, stated.recoatUntilH());
    mark(basis, POT_LIFE, stated.potLifeH());
    mark(basis, LOWEST_FILM, stated.lowestFilmC());
    return basis;
  }

  private static void mark(Map<String, Basis> basis, String key, OptionalDouble stated) {
    basis.put(key, stated.isPresent() ? Basis.DATA_SHEET : Basis.ASSUMED);
  }

  static OptionalDouble scaled(OptionalDouble value, double factor) {
    return value.isPresent() ? OptionalDouble.of(value.getAsDouble() * factor) : value;
  }
}

package coatwright.film;

import coatwright.quantity.OutOfRange;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * What a product's data sheet states, and the air it states it for.
 *
 * @param tempC °C, 5 to 40
 * @param rhPct per cent RH, 5 to 95
 * @param wetFilmUm of one coat, µm, 5 to 500
 * @param hours to each milestone it names, above 0 and in the order of the milestones
 * @param recoatUntilH late end of the recoat window, hours
 * @param potLifeH of the mixed pot, hours
 * @param lowestFilmC minimum film-forming temperature, °C
 */
public record StatedTimes(
    double tempC,
    double rhPct,
    double wetFilmUm,
    Map<Milestone, Double> hours,
    OptionalDouble recoatUntilH,
    OptionalDouble potLifeH,
    OptionalDouble lowestFilmC) {

  private static final double MOST_H = 24 * 365;

  public StatedTimes {
    OutOfRange.check("stated temperature", tempC, "°C", 5, 40);
    OutOfRange.check("stated humidity", rhPct, "%", 5, 95);
    OutOfRange.check("stated wet film", wetFilmUm, "µm", 5, 500);
    EnumMap<Milestone, Double> inOrder = new EnumMap<>(Milestone.class);
    inOrder.putAll(hours);
    double before = 0;
    for (Map.Entry<Milestone, Double> stated : inOrder.entrySet()) {
      OutOfRange.check("time to " + stated.getKey(), stated.getValue(), "h", 1e-3, MOST_H);
      if (stated.getValue() < before) {
        throw new OutOfRange(
            "the stated time to %s, %s h, is shorter than that to an earlier milestone"
                .formatted(stated.getKey(), stated.getValue()));
      }
      before = stated.getValue();
    }
    hours = Collections.unmodifiableMap(inOrder);
    double recoatH = inOrder.getOrDefault(Milestone.DRY_TO_RECOAT, 0.0);
    if (recoatUntilH.isPresent() && recoatUntilH.getAsDouble() < recoatH) {
      throw new OutOfRange(
          "the stated recoat window ends, at %s h, before it begins, at %s h"
              .formatted(recoatUntilH.getAsDouble(), recoatH));
    }
    recoatUntilH.ifPresent(
        h -> OutOfRange.check("late end of the recoat window", h, "h", 0.1, MOST_H));
    potLifeH.ifPresent(h -> OutOfRange.check("pot life", h, "h", 0.05, 24 * 60));
    lowestFilmC.ifPresent(
        c -> OutOfRange.check("minimum film-forming temperature", c, "°C", -5, 40));
  }
}

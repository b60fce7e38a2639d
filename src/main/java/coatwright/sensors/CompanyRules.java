package coatwright.sensors;

import coatwright.air.SaturationPressure;
import coatwright.sensors.Neighbours.Neighbour;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What the other sensors of the room give away. Air is compared by its vapour, never by RH alone:
 * equal vapour and unequal temperature is a warm sensor, not dry air.
 */
final class CompanyRules {
  private static final double WARM_OFFSET_K = 4;
  private static final double SAME_DEW_POINT_K = 1;
  private static final double OTHERS_AGREE_PCT = 10;
  private static final double ALONE_PCT = 20;
  private static final double RH_FLOOR_PCT = 0.5;

  private CompanyRules() {}

  /**
   * @param corrected the same values as calibration has them, like the neighbours'
   */
  static void judge(Sample sample, Sample corrected, List<Neighbour> neighbours) {
    if (!sample.has(Quantity.AIR_TEMPERATURE) || !sample.has(Quantity.RELATIVE_HUMIDITY)) {
      return;
    }
    double t = corrected.value(Quantity.AIR_TEMPERATURE).getAsDouble();
    double rh = corrected.value(Quantity.RELATIVE_HUMIDITY).getAsDouble();
    warmOffset(sample, neighbours, t, rh);
    aloneAgainstTwo(sample, neighbours, t, rh);
  }

  private static void warmOffset(Sample sample, List<Neighbour> neighbours, double t, double rh) {
    double dewPointC = dewPointC(t, rh);
    Optional<Neighbour> cooler =
        neighbours.stream()
            .filter(other -> other.t().isPresent())
            .filter(other -> t - other.t().getAsDouble() >= WARM_OFFSET_K)
            .filter(
                other ->
                    Math.abs(dewPointC(other.t().getAsDouble(), other.rh()) - dewPointC)
                        <= SAME_DEW_POINT_K)
            .findFirst();
    cooler.ifPresent(
        other ->
            sample.hold(
                "warm offset: %s K above another sensor of the room while the dew points agree; "
                        .formatted(Text.tenth(t - other.t().getAsDouble()))
                    + "move it away from heat and its own radio, or give it a correction"));
  }

  private static void aloneAgainstTwo(
      Sample sample, List<Neighbour> neighbours, double t, double rh) {
    List<Double> others = neighbours.stream().map(other -> other.rhAt(t)).sorted().toList();
    if (others.size() < 2) {
      return;
    }
    double middle = others.get(others.size() / 2);
    boolean agree = others.get(others.size() - 1) - others.get(0) <= OTHERS_AGREE_PCT;
    if (agree && Math.abs(rh - middle) > ALONE_PCT) {
      sample.hold(
          "rh %s while %d other sensors of the room read %s: contaminated or wet?"
              .formatted(
                  Text.plain(rh),
                  others.size(),
                  others.stream().map(Text::tenth).collect(Collectors.joining(" and "))));
    }
  }

  private static double dewPointC(double t, double rh) {
    return SaturationPressure.dewPointC(
        Math.max(rh, RH_FLOOR_PCT) / 100 * SaturationPressure.overWaterPa(t));
  }
}

package coatwright.sensors;

import coatwright.air.SaturationPressure;
import coatwright.sensors.Neighbours.Neighbour;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Looks whether a sensor warms itself: after a restart, its first minute against its twentieth.
 * More than 0.7 K at the same vapour pressure, while no other sensor of the room grew warmer, is
 * its own warmth. The figures are ours.
 */
final class WarmUp {
  private static final Duration FIRST = Duration.ofMinutes(1);
  private static final Duration LOOK_FROM = Duration.ofMinutes(18);
  private static final Duration LOOK_UNTIL = Duration.ofMinutes(26);
  private static final Duration TOLD_FOR = Duration.ofDays(1);
  private static final double RISE_K = 0.7;
  private static final double OTHERS_ROSE_K = 0.4;
  private static final double SAME_VAPOUR = 0.03;

  /** The first minute's mean, and what the others read then. */
  private record Start(
      Instant at, double sumT, double sumVapourPa, int count, OptionalDouble othersT) {}

  private Optional<Start> start = Optional.empty();
  private Optional<Instant> toldAt = Optional.empty();

  /** It fell silent, so it may have been without power. */
  void restarted(Instant at, List<Neighbour> company) {
    start = Optional.of(new Start(at, 0, 0, 0, others(company)));
  }

  /** Takes one pair in; true while it is known to warm itself. */
  boolean take(double t, double rh, Instant at, List<Neighbour> company) {
    double vapourPa = rh / 100 * SaturationPressure.overWaterPa(t);
    start.ifPresent(begun -> follow(begun, t, vapourPa, at, company));
    return toldAt.map(told -> at.isBefore(told.plus(TOLD_FOR))).orElse(false);
  }

  private void follow(Start begun, double t, double vapourPa, Instant at, List<Neighbour> company) {
    Duration since = Duration.between(begun.at(), at);
    if (since.compareTo(FIRST) <= 0) {
      start =
          Optional.of(
              new Start(
                  begun.at(),
                  begun.sumT() + t,
                  begun.sumVapourPa() + vapourPa,
                  begun.count() + 1,
                  begun.othersT()));
    } else if (since.compareTo(LOOK_UNTIL) > 0 || begun.count() == 0) {
      start = Optional.empty();
    } else if (since.compareTo(LOOK_FROM) >= 0) {
      double rise = t - begun.sumT() / begun.count();
      double before = begun.sumVapourPa() / begun.count();
      boolean same = Math.abs(vapourPa - before) <= SAME_VAPOUR * before;
      toldAt =
          rise > RISE_K && same && !othersRose(begun, company) ? Optional.of(at) : Optional.empty();
      start = Optional.empty();
    }
  }

  private static boolean othersRose(Start begun, List<Neighbour> company) {
    OptionalDouble now = others(company);
    return begun.othersT().isPresent()
        && now.isPresent()
        && now.getAsDouble() - begun.othersT().getAsDouble() > OTHERS_ROSE_K;
  }

  private static OptionalDouble others(List<Neighbour> company) {
    return company.stream().flatMapToDouble(other -> other.t().stream()).average();
  }
}

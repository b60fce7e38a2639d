package coatwright.film;

import coatwright.film.WaterborneCure.Goal;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Curing finishes with the figures an independent program was run with, and their steady times. */
final class Cures {
  static final double HOUR_S = 3600;

  private Cures() {}

  static CureFacts facts(double solidsVolPct, boolean oil) {
    return new CureFacts(
        solidsVolPct,
        20,
        50,
        10,
        0.6,
        oil,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Map.of("touch", Basis.PUBLISHED));
  }

  static OxidativeCure varnish() {
    return new OxidativeCure(
        facts(50, true),
        60e3,
        new OxidativeCure.Damp(65, 5, 0.0625, 0.2),
        40,
        0.7,
        milestones(6.0, 24.0, 30.0, 336.0, 480.0, 672.0),
        OptionalDouble.of(72));
  }

  static WaterborneCure water() {
    return new WaterborneCure(
        facts(33, false),
        55e3,
        0.5,
        8,
        new WaterborneCure.Surface(6, 3, 0.3, 5.1),
        milestones(
            new Goal(0.9, 0.1),
            new Goal(1.15, 2),
            new Goal(1.3, 3),
            new Goal(1.3, 144),
            new Goal(1.3, 240),
            new Goal(0, 336)),
        Optional.of(new Goal(1.15, 144)));
  }

  static TwoPartCure twoPart() {
    return new TwoPartCure(
        facts(45, false),
        55e3,
        0.1,
        new TwoPartCure.Network(-40, 68, 0.45, 5, 4),
        2,
        milestones(0.45, 0.55, 0.72, 0.85, 0.86, 0.88),
        OptionalDouble.of(0.8));
  }

  static List<Curing> all() {
    return List.of(varnish(), water(), twoPart());
  }

  @SafeVarargs
  static <T> Map<Milestone, T> milestones(T... inOrder) {
    Map<Milestone, T> map = new java.util.EnumMap<>(Milestone.class);
    List<Milestone> order = List.copyOf(Curing.keys().keySet());
    for (int i = 0; i < inOrder.length; i++) {
      map.put(order.get(i), inOrder[i]);
    }
    return map;
  }

  /** Hours to a milestone of the film as described. */
  static double hoursTo(CureJob job, Milestone m) {
    return CureWalk.of(job).secondsTo(CureMember.MIDDLE)[m.index()] / HOUR_S;
  }

  static CureJob steady(Curing curing, double airC, double rh, double wetUm) {
    return CureJob.steady(
        curing,
        CureCoat.unthinned(0, wetUm),
        AirCourse.steady(airC, rh, 0.1),
        Spreads.told(0.2, 0));
  }

  /** A job in air that is given, with the wood as warm as the air. */
  static CureJob in(Curing curing, AirCourse air, double wetUm, BenchTest.Seen... tests) {
    return new CureJob(
        curing,
        List.of(CureCoat.unthinned(0, wetUm)),
        air,
        air.airTempCAt(0),
        new Spreads(0.2, 0.07, 0.3, 0.5, 3, 1, 1),
        Arrays.asList(tests),
        12 * HOUR_S,
        List.of(),
        0);
  }

  /** Days and nights, every hour a reading. */
  static AirCourse dayAndNight(double meanC, double swingK, double rh, int days) {
    int n = days * 24 + 1;
    double[] timeS = new double[n];
    double[] tempC = new double[n];
    double[] rhs = new double[n];
    for (int i = 0; i < n; i++) {
      timeS[i] = i * HOUR_S;
      tempC[i] = meanC + swingK * Math.sin(2 * Math.PI * i / 24);
      rhs[i] = rh;
    }
    return new AirCourse(timeS, tempC, rhs, 0.1);
  }
}

package coatwright.film;

import java.util.TreeSet;

/**
 * The air along a curing film's life, as nodes with straight lines between: the film's temperature
 * (the air's, but for the wood's own start under the last coat), the room's and its humidity. After
 * the last node everything stays as it is.
 *
 * <p>The wood's start is forgotten with a time constant of three quarters of an hour: 18 mm of a
 * light hardwood, its back insulated, at 8 W/(m² K); assumed.
 */
final class CureAir {
  private static final double WOOD_S = 2700;
  private static final double SAME_K = 0.05;
  private static final double LONGEST_S = 1800;
  private static final double STEP_K = 0.5;
  private static final double STEP_RH = 0.02;
  private static final double THIN_K = 0.15;
  private static final double THIN_RH = 0.005;
  private static final double LEAST_RH = 0.03;

  private final AirCourse air;
  private final double lastCoatS;
  private final double woodOffsetK;
  private final double nowS;
  private final double[] timeS;
  private final double[] filmTempC;
  private final double[] airTempC;
  private final double[] rhFraction;

  /**
   * @param fine whether to cut until a rate between two nodes is as good as straight
   */
  CureAir(CureJob job, boolean fine) {
    this.air = job.air().size() < 3 ? job.air() : job.air().thinned(THIN_K, THIN_RH);
    this.lastCoatS = job.lastCoat().atS();
    double offsetK = job.woodTempC() - air.airTempCAt(lastCoatS);
    this.woodOffsetK = Math.abs(offsetK) < SAME_K ? 0 : offsetK;
    this.nowS = job.nowS();
    this.timeS = fine ? cut(breaks(job)) : breaks(job);
    this.filmTempC = new double[timeS.length];
    this.airTempC = new double[timeS.length];
    this.rhFraction = new double[timeS.length];
    for (int i = 0; i < timeS.length; i++) {
      airTempC[i] = air.airTempCAt(timeS[i]);
      filmTempC[i] = filmTempAt(timeS[i]);
      rhFraction[i] = air.rhFractionAt(timeS[i]);
    }
  }

  /** The film as described at any moment, °C. */
  double filmTempAt(double atS) {
    double offset = atS < lastCoatS ? 0 : woodOffsetK * Math.exp(-(atS - lastCoatS) / WOOD_S);
    return air.airTempCAt(atS) + offset;
  }

  private double[] breaks(CureJob job) {
    double fromS = job.coats().get(0).atS();
    TreeSet<Double> breaks = new TreeSet<>();
    breaks.add(fromS);
    breaks.add(lastCoatS);
    for (int i = 0; i < air.size(); i++) {
      breaks.add(air.knotTimeS(i));
    }
    breaks.add(nowS);
    breaks.add(nowS + 1);
    if (woodOffsetK != 0) {
      for (int i = 1; i <= 32; i++) {
        breaks.add(lastCoatS + i * WOOD_S / 4);
      }
    }
    return breaks.tailSet(fromS).stream().mapToDouble(Double::doubleValue).toArray();
  }

  private double[] cut(double[] breaks) {
    TreeSet<Double> cut = new TreeSet<>();
    cut.add(breaks[0]);
    for (int i = 1; i < breaks.length; i++) {
      double spanS = breaks[i] - breaks[i - 1];
      double stepK = Math.abs(filmTempAt(breaks[i]) - filmTempAt(breaks[i - 1]));
      double stepRh = Math.abs(air.rhFractionAt(breaks[i]) - air.rhFractionAt(breaks[i - 1]));
      boolean flat = stepK == 0 && stepRh == 0;
      double parts =
          flat
              ? 1
              : Math.ceil(Math.max(spanS / LONGEST_S, Math.max(stepK / STEP_K, stepRh / STEP_RH)));
      for (int j = 1; j < parts; j++) {
        cut.add(breaks[i - 1] + spanS * j / parts);
      }
      cut.add(breaks[i]);
    }
    return cut.stream().mapToDouble(Double::doubleValue).toArray();
  }

  int size() {
    return timeS.length;
  }

  double timeS(int node) {
    return timeS[node];
  }

  double lastCoatS() {
    return lastCoatS;
  }

  double draughtMPerS() {
    return air.draughtMPerS();
  }

  /** The film as described. */
  double filmTempC(int node) {
    return filmTempC[node];
  }

  double airTempC(int node) {
    return airTempC[node];
  }

  double rhFraction(int node) {
    return rhFraction[node];
  }

  /** By how much a member's air is warmer than described at that node, K. */
  double warmerK(int node, CureMember m) {
    return m.airTempK() + (timeS[node] > nowS ? m.comingAirK() : 0);
  }

  /** The member's film there, °C. */
  double filmTempC(int node, CureMember m) {
    return filmTempC[node] + warmerK(node, m);
  }

  /** The member's humidity there; air cannot hold more than all. */
  double rhFraction(int node, CureMember m) {
    return Math.min(1, Math.max(LEAST_RH, rhFraction[node] + m.rhFraction()));
  }
}

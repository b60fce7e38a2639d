package coatwright.film;

import java.util.Arrays;

/**
 * The conversion of a two-part film through time.
 *
 * <p>Solved for u = X/(1−X), which at second order goes straight with time: du/dt = k(T) s(X, T).
 * Where the network vitrifies s falls a thousandfold within a few kelvin of its own glass
 * transition, so the step is a linearly implicit one that damps whatever it cannot follow: ROS2
 * with γ = 1 − 1/√2 (Verwer, Spee, Blom and Hundsdorfer, SIAM J. Sci. Comput. 20 (1999) 1456), the
 * air's slope as forcing, the first-order result beside it as error estimate.
 */
final class Conversion {
  /** Beyond this nothing is promised, h. */
  static final double HORIZON_H = CureEnsemble.HORIZON_S / 3600;

  private static final double GAMMA = 1 - 1 / Math.sqrt(2);
  private static final double RELATIVE = 4e-4;
  private static final double ABSOLUTE = 4e-5;
  private static final double FIRST_STEP_H = 0.02;
  private static final double GAS_CONSTANT = 8.314462618;

  private final TwoPartCure cure;
  private final CureMember member;
  private double[] hours = new double[64];
  private double[] reacted = new double[64];
  private double[] speed = new double[64];
  private int size;

  private Conversion(TwoPartCure cure, CureMember member) {
    this.cure = cure;
    this.member = member;
  }

  /** u of a conversion. */
  static double reacted(double conversion) {
    return conversion / (1 - conversion);
  }

  /** In air of one temperature, up to the horizon. */
  static Conversion steady(TwoPartCure cure, double tempC) {
    Conversion c = new Conversion(cure, CureMember.MIDDLE);
    c.keep(0, 0, c.rate(0, tempC));
    c.go(0, tempC, HORIZON_H, tempC, FIRST_STEP_H, Double.POSITIVE_INFINITY);
    return c;
  }

  /** Along the air from the last coat on, until u has come to {@code most} or to the horizon. */
  static Conversion along(TwoPartCure cure, CureAir air, CureMember m, double most) {
    Conversion c = new Conversion(cure, m);
    double fromS = air.lastCoatS();
    int node = 0;
    while (node < air.size() - 1 && air.timeS(node + 1) <= fromS) {
      node++;
    }
    double tempC = air.filmTempC(node, m);
    c.keep(0, 0, c.rate(0, tempC));
    double stepH = FIRST_STEP_H;
    for (int next = node + 1; next < air.size() && c.reacted[c.size - 1] < most; next++) {
      double toH = (air.timeS(next) - fromS) / 3600;
      double toC = air.filmTempC(next, m);
      stepH = c.go(c.hours[c.size - 1], tempC, toH, toC, stepH, most);
      tempC = toC;
    }
    c.go(c.hours[c.size - 1], tempC, HORIZON_H, tempC, stepH, most);
    return c;
  }

  /** Hours until that conversion; infinite where it is not reached within the horizon. */
  double hoursTo(double conversion) {
    return hoursToReacted(reacted(conversion));
  }

  double hoursToReacted(double u) {
    if (u > reacted[size - 1]) {
      return Double.POSITIVE_INFINITY;
    }
    int found = Arrays.binarySearch(reacted, 0, size, u);
    int after = found >= 0 ? found : -found - 1;
    if (after == 0) {
      return 0;
    }
    double low = 0;
    double high = 1;
    for (int i = 0; i < 40; i++) {
      double middle = 0.5 * (low + high);
      if (between(after, middle) < u) {
        low = middle;
      } else {
        high = middle;
      }
    }
    double share = 0.5 * (low + high);
    return hours[after - 1] + share * (hours[after] - hours[after - 1]);
  }

  /** Conversion after so many hours. */
  double after(double h) {
    double at = Math.min(h, hours[size - 1]);
    int found = Arrays.binarySearch(hours, 0, size, at);
    int after = Math.max(1, found >= 0 ? found : -found - 1);
    double u = between(after, (at - hours[after - 1]) / (hours[after] - hours[after - 1]));
    return u / (1 + u);
  }

  /** Cubic through values and slopes at both ends of a step. */
  private double between(int after, double share) {
    double h = hours[after] - hours[after - 1];
    double back = 1 - share;
    return back * back * (1 + 2 * share) * reacted[after - 1]
        + share * share * (3 - 2 * share) * reacted[after]
        + share * back * h * (back * speed[after - 1] - share * speed[after]);
  }

  private double rate(double u, double tempC) {
    double x = u / (1 + u);
    return cure.ratePerHour(tempC, member.energy())
        / member.product()
        * cure.network().mobility(x, tempC);
  }

  /** Steps from one temperature to another; hands back the step it had arrived at. */
  private double go(
      double fromH, double fromC, double toH, double toC, double firstStepH, double most) {
    double t = fromH;
    double step = firstStepH;
    double slope = toH > fromH ? (toC - fromC) / (toH - fromH) : 0;
    while (t < toH && reacted[size - 1] < most) {
      double h = Math.min(step, toH - t);
      boolean last = t + h >= toH || toH - t - h < 1e-9;
      double u = reacted[size - 1];
      double tempC = fromC + slope * (t - fromH);
      double endC = last ? toC : tempC + slope * h;
      double next = step(u, tempC, endC, h);
      double error = Math.abs(next - u - h * firstSlope) / (ABSOLUTE + RELATIVE * Math.abs(next));
      double factor = Math.max(0.2, Math.min(4, 0.9 / Math.sqrt(Math.max(error, 1e-6))));
      if (error <= 1) {
        t = last ? toH : t + h;
        keep(t, Math.max(u, next), rate(Math.max(u, next), endC));
        step = last && h < step ? Math.max(step, h * factor) : h * factor;
      } else {
        step = h * factor;
      }
    }
    return step;
  }

  /** k1 of the step just tried: the first-order slope. */
  private double firstSlope;

  private double step(double u, double tempC, double endC, double h) {
    double f = rate(u, tempC);
    double x = u / (1 + u);
    double moving = cure.network().mobility(x, tempC);
    double width = cure.network().widthK();
    double perU = -f * (1 - moving) * cure.network().glassSlope(x) / width / ((1 + u) * (1 + u));
    double kelvin = tempC + 273.15;
    double perK =
        f
            * (cure.energyJPerMol() * member.energy() / (GAS_CONSTANT * kelvin * kelvin)
                + (1 - moving) / width);
    double forcing = GAMMA * perK * (endC - tempC);
    double damped = 1 - GAMMA * h * perU;
    double k1 = (f + forcing) / damped;
    double k2 = (rate(Math.max(0, u + h * k1), endC) - 2 * k1 - forcing) / damped;
    firstSlope = k1;
    return u + 1.5 * h * k1 + 0.5 * h * k2;
  }

  private void keep(double t, double u, double perHour) {
    if (size == hours.length) {
      hours = Arrays.copyOf(hours, 2 * size);
      reacted = Arrays.copyOf(reacted, 2 * size);
      speed = Arrays.copyOf(speed, 2 * size);
    }
    hours[size] = t;
    reacted[size] = u;
    speed[size] = perHour;
    size++;
  }
}

package coatwright.mix;

import coatwright.quantity.OutOfRange;
import java.util.List;

/**
 * Vapour of evaporated solvents as an average over a room.
 *
 * <p>Well mixed: dC/dt = release/V − n C, from clean air, the release even over its time. A true
 * room is richer at jar, film and floor, so a small share here says nothing about those places, and
 * none of these numbers is a pass. Shares of several solvents are added, explosive limits by Le
 * Chatelier's rule and exposure as OSHA 29 CFR 1910.1000(d)(2) does (both from memory).
 *
 * @param parts what evaporates
 * @param roomM3 volume of the room's air, 1 to 100 000 m³
 * @param airTempC −20 to 60 °C
 * @param pressurePa 50 to 110 kPa
 */
public record VapourLoad(List<Part> parts, double roomM3, double airTempC, double pressurePa) {
  private static final double EIGHT_H = 8;
  private static final double PPM_PER_PCT = 10_000;

  /**
   * A liquid that evaporates.
   *
   * @param liquidMl volume at 20 °C, mL, 0 to 100 L
   */
  public record Part(VapourLimits solvent, double liquidMl) {
    public Part {
      OutOfRange.check("evaporated " + solvent.solvent(), liquidMl, "mL", 0, 100_000);
    }
  }

  /**
   * How the air is changed while the vapour comes off.
   *
   * @param airChangesPerH room volumes of outdoor air an hour, 0 to 100
   * @param overH hours in which the liquid evaporates, 0.05 to 8
   */
  public record Airing(double airChangesPerH, double overH) {
    public Airing {
      OutOfRange.check("air changes", airChangesPerH, "1/h", 0, 100);
      OutOfRange.check("time to evaporate", overH, "h", 0.05, EIGHT_H);
    }
  }

  public VapourLoad {
    parts = List.copyOf(parts);
    OutOfRange.check("room volume", roomM3, "m³", 1, 100_000);
    OutOfRange.check("air temperature", airTempC, "°C", -20, 60);
    OutOfRange.check("air pressure", pressurePa, "Pa", 50_000, 110_000);
  }

  /** Vapour of one part if nothing left the room, ppm by volume. */
  public double closedPpm(Part part) {
    double mg = part.liquidMl() * part.solvent().densityKgPerM3();
    return mg / roomM3 / part.solvent().mgPerM3PerPpm(airTempC, pressurePa);
  }

  /** Highest room average while it evaporates, ppm: at its end. */
  public double peakPpm(Part part, Airing airing) {
    return closedPpm(part) * kept(airing.airChangesPerH() * airing.overH());
  }

  /**
   * Room average over the eight hours from the first drop, ppm: C₀/(8 n) (1 − (1 − e^(−n τ))/(n τ)
   * e^(−n (8 − τ))), with C₀ the closed room's and τ the time it evaporates in.
   */
  public double eightHourPpm(Part part, Airing airing) {
    double n = airing.airChangesPerH();
    double tau = airing.overH();
    double closed = closedPpm(part);
    if (n * EIGHT_H < 1e-6) {
      return closed * (EIGHT_H - tau / 2) / EIGHT_H;
    }
    double left = kept(n * tau) * Math.exp(-n * (EIGHT_H - tau));
    return closed / (EIGHT_H * n) * (1 - left);
  }

  /** The closed room's share of the lower explosive limit, per cent. */
  public double closedLelSharePct() {
    return parts.stream().mapToDouble(p -> lelShare(p, closedPpm(p))).sum();
  }

  /** The peak's share of the lower explosive limit, per cent. */
  public double lelSharePct(Airing airing) {
    return parts.stream().mapToDouble(p -> lelShare(p, peakPpm(p, airing))).sum();
  }

  /** The closed room's share of the eight-hour exposure limits, per cent. */
  public double closedExposureSharePct() {
    return parts.stream().mapToDouble(p -> 100 * closedPpm(p) / p.solvent().eightHourPpm()).sum();
  }

  /** The eight-hour average's share of the exposure limits, per cent. */
  public double exposureSharePct(Airing airing) {
    return parts.stream()
        .mapToDouble(p -> 100 * eightHourPpm(p, airing) / p.solvent().eightHourPpm())
        .sum();
  }

  /**
   * The peak's share of the limits for a short time, per cent: the highest room average against a
   * ceiling or a quarter of an hour's limit; 0 where none is published.
   */
  public double shortTimeSharePct(Airing airing) {
    return parts.stream()
        .filter(p -> p.solvent().shortTimePpm().isPresent())
        .mapToDouble(p -> 100 * peakPpm(p, airing) / p.solvent().shortTimePpm().getAsDouble())
        .sum();
  }

  private static double lelShare(Part part, double ppm) {
    return 100 * ppm / (part.solvent().lelPct() * PPM_PER_PCT);
  }

  /** (1 − e^(−x))/x: the share of an even release still in the air at its end. */
  private static double kept(double x) {
    return x < 1e-9 ? 1 : -Math.expm1(-x) / x;
  }
}

package coatwright.climate;

import coatwright.air.MoistAir;
import coatwright.air.SaturationPressure;
import coatwright.climate.forecast.HourAir;
import coatwright.climate.forecast.HourlyForecast;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A room's air over the next 72 hours: a middle, and members that each are one course it may take,
 * temperature and vapour of one member belonging together from the first hour to the last.
 *
 * <p>Told at knots: the present, then the middle of every hour to come. The present is what is
 * measured, and every course leaves it there: what a member was off by then fades over three hours.
 */
public final class AirForecast {
  /** How far ahead. */
  public static final Duration AHEAD = Duration.ofDays(3);

  /** From here on it tells what is usual for the hour; history knows no more of vapour then. */
  public static final Duration FORECAST_FOR = Duration.ofHours(24);

  private static final double NINETY_SDS = 1.2815515655;
  private static final double ANCHOR_FADES_S = 3 * 3600;

  private final String room;
  private final HourlyForecast.Basis basis;
  private final boolean outdoors;
  private final List<Instant> at;
  private final List<HourAir> past;
  private final AirPoint[] middle;
  private final double[][] tempC;
  private final double[][] vapourPa;

  /** The tenth and the ninetieth percentile; the middle lies within. */
  public record Range(double p10, double p90) {}

  /** What a forecast is made of beside the hours themselves. */
  record Made(
      String room, Instant now, Optional<AirPoint> measured, boolean outdoors, HourAir last) {}

  AirForecast(Made made, HourlyForecast hourly, List<HourAir> past) {
    this.room = made.room();
    this.basis = hourly.basis();
    this.outdoors = made.outdoors();
    this.past = List.copyOf(past);
    this.at = knots(made.now(), hourly.hour());
    int first = HourlyForecast.LEADS - (at.size() - 1) + 1;
    Course middleCourse = new Course(made, hourly.hour(), hourly::tempC, hourly::vapourPa, first);
    tempC = new double[hourly.members()][];
    vapourPa = new double[hourly.members()][];
    for (int m = 0; m < hourly.members(); m++) {
      int member = m;
      Course course =
          new Course(
              made,
              hourly.hour(),
              lead -> hourly.tempC(member, lead),
              lead -> hourly.vapourPa(member, lead),
              first);
      tempC[m] = course.tempC;
      vapourPa[m] = course.vapourPa;
    }
    middle = new AirPoint[at.size()];
    double sensorK = made.measured().map(AirPoint::temperatureErrorK).orElse(0.0);
    double sensorPct = made.measured().map(AirPoint::rhErrorPct).orElse(0.0);
    for (int k = 0; k < middle.length; k++) {
      Range t = range(column(tempC, k), middleCourse.tempC[k]);
      Range rh = range(rhColumn(k), rhPct(middleCourse.tempC[k], middleCourse.vapourPa[k]));
      middle[k] =
          SensorAir.point(
              at.get(k),
              middleCourse.tempC[k],
              middleCourse.vapourPa[k],
              Math.hypot(sensorK, (t.p90() - t.p10()) / 2 / NINETY_SDS),
              Math.hypot(sensorPct, (rh.p90() - rh.p10()) / 2 / NINETY_SDS));
    }
  }

  private static List<Instant> knots(Instant now, long lastHour) {
    List<Instant> knots = new ArrayList<>();
    knots.add(now);
    for (int lead = 1; lead <= HourlyForecast.LEADS; lead++) {
      Instant middleOfHour = Instant.ofEpochSecond((lastHour + lead) * 3600 + 1800);
      if (middleOfHour.isAfter(now)) {
        knots.add(middleOfHour);
      }
    }
    return knots;
  }

  /** A value for a lead. */
  private interface ByLead {
    double at(int lead);
  }

  /** One course through the knots, tied to what is measured now. */
  private static final class Course {
    private final double[] tempC;
    private final double[] vapourPa;

    Course(Made made, long lastHour, ByLead temp, ByLead vapour, int first) {
      int knots = HourlyForecast.LEADS - first + 2;
      tempC = new double[knots];
      vapourPa = new double[knots];
      double nowH = made.now().toEpochMilli() / 3.6e6 - lastHour - 0.5;
      double untiedC = between(nowH, made.last().tempC(), temp);
      double untiedPa = between(nowH, made.last().vapourPa(), vapour);
      double offC = made.measured().map(air -> air.airTempC() - untiedC).orElse(0.0);
      double offPa = made.measured().map(air -> air.vapourPressurePa() / untiedPa).orElse(1.0);
      for (int k = 0; k < knots; k++) {
        int lead = first + k - 1;
        double aheadS = k == 0 ? 0 : (lead - nowH) * 3600;
        double tied = Math.exp(-aheadS / ANCHOR_FADES_S);
        double c = (k == 0 ? untiedC : temp.at(lead)) + tied * offC;
        double pa = (k == 0 ? untiedPa : vapour.at(lead)) * Math.pow(offPa, tied);
        tempC[k] = Math.min(MoistAir.WARMEST_C, Math.max(MoistAir.COLDEST_C, c));
        vapourPa[k] = Math.min(pa, SaturationPressure.overWaterPa(tempC[k]));
      }
    }

    private static double between(double leadH, double last, ByLead values) {
      double at = Math.min(HourlyForecast.LEADS, Math.max(0, leadH));
      int below = (int) Math.min(HourlyForecast.LEADS - 1, Math.floor(at));
      double from = below == 0 ? last : values.at(below);
      return from + (at - below) * (values.at(below + 1) - from);
    }
  }

  private static double rhPct(double tempC, double vapourPa) {
    return Math.min(100, 100 * vapourPa / SaturationPressure.overWaterPa(tempC));
  }

  private static Range range(double[] values, double middle) {
    return new Range(
        Math.min(middle, HourlyForecast.quantile(values, 0.1)),
        Math.max(middle, HourlyForecast.quantile(values, 0.9)));
  }

  private static double[] column(double[][] members, int knot) {
    double[] values = new double[members.length];
    for (int m = 0; m < values.length; m++) {
      values[m] = members[m][knot];
    }
    return values;
  }

  private double[] rhColumn(int knot) {
    double[] values = new double[tempC.length];
    for (int m = 0; m < values.length; m++) {
      values[m] = rhPct(tempC[m][knot], vapourPa[m][knot]);
    }
    return values;
  }

  public String room() {
    return room;
  }

  /** What the forecast rests on. */
  public HourlyForecast.Basis basis() {
    return basis;
  }

  /** Whether an outdoor forecast went in. */
  public boolean outdoors() {
    return outdoors;
  }

  /** The present of the forecast. */
  public Instant now() {
    return at.get(0);
  }

  /** From here on it is what is usual for the hour. */
  public Instant usualFrom() {
    return now().plus(FORECAST_FOR);
  }

  /** Knot 0 is the present; each of the others the middle of an hour to come. */
  public int knots() {
    return middle.length;
  }

  public Instant at(int knot) {
    return at.get(knot);
  }

  /** Middle of the forecast; its errors are standard uncertainties. */
  public AirPoint middle(int knot) {
    return middle[knot];
  }

  /** Temperature, °C. */
  public Range airTempC(int knot) {
    return range(column(tempC, knot), middle[knot].airTempC());
  }

  /** Relative humidity, per cent. */
  public Range rhPct(int knot) {
    return range(rhColumn(knot), middle[knot].rhPct());
  }

  /** Dew point, °C. */
  public Range dewPointC(int knot) {
    Range pa = range(column(vapourPa, knot), middle[knot].vapourPressurePa());
    return new Range(
        SaturationPressure.dewPointC(pa.p10()), SaturationPressure.dewPointC(pa.p90()));
  }

  /** How many courses there are. */
  public int members() {
    return tempC.length;
  }

  public double airTempC(int member, int knot) {
    return tempC[member][knot];
  }

  public double vapourPa(int member, int knot) {
    return vapourPa[member][knot];
  }

  /** Relative humidity of a member, per cent. */
  public double rhPct(int member, int knot) {
    return rhPct(tempC[member][knot], vapourPa[member][knot]);
  }

  /**
   * How far the mean temperature of the coming days may lie off, standard deviation, K: of the
   * three days or of the last of them, whichever is wider, for what comes after the third is no
   * better known than the third.
   */
  public double meanErrorK() {
    return Math.max(meanErrorK(1), meanErrorK(Math.max(1, knots() - 24)));
  }

  private double meanErrorK(int fromKnot) {
    double[] means = new double[members()];
    for (int m = 0; m < means.length; m++) {
      for (int k = fromKnot; k < knots(); k++) {
        means[m] += tempC[m][k] / (knots() - fromKnot);
      }
    }
    double half = HourlyForecast.quantile(means, 0.9) - HourlyForecast.quantile(means, 0.1);
    return half / 2 / NINETY_SDS;
  }

  /** Hours that were measured in the last 31 days, oldest first. */
  public List<HourAir> past() {
    return past;
  }

  /** The middle from one instant to before another, at most to the last knot. */
  public List<AirPoint> middle(Instant from, Instant to, Duration every) {
    List<AirPoint> points = new ArrayList<>();
    int knot = 0;
    Instant last = at.get(at.size() - 1);
    for (Instant t = from; t.isBefore(to) && !t.isAfter(last); t = t.plus(every)) {
      while (knot + 2 < middle.length && !at.get(knot + 1).isAfter(t)) {
        knot++;
      }
      points.add(between(middle[knot], middle[knot + 1], t));
    }
    return points;
  }

  private static AirPoint between(AirPoint a, AirPoint b, Instant t) {
    double span = Duration.between(a.at(), b.at()).toMillis();
    double share = Math.min(1, Math.max(0, Duration.between(a.at(), t).toMillis() / span));
    return SensorAir.point(
        t,
        a.airTempC() + share * (b.airTempC() - a.airTempC()),
        a.vapourPressurePa() + share * (b.vapourPressurePa() - a.vapourPressurePa()),
        a.temperatureErrorK() + share * (b.temperatureErrorK() - a.temperatureErrorK()),
        a.rhErrorPct() + share * (b.rhErrorPct() - a.rhErrorPct()));
  }
}

package coatwright.climate.forecast;

import coatwright.air.SaturationPressure;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Outdoor air hour by hour: invented from a fixed seed, or read from a file.
 *
 * <p>The invented one: a year of ±9 K about 10 °C, a day of ±1.5 (winter) to ±5 K (summer) damped
 * by cloud, weather that wanders (3.5 K, three days) and fronts that come every four days or so and
 * change air of one kind for another within hours; dew points follow the air of each front and stay
 * below the temperature. Our own assumptions throughout; it is no climate of any place.
 */
final class HourlyOutdoors {
  final long firstHour;
  final double[] tempC;
  final double[] vapourPa;

  private HourlyOutdoors(long firstHour, double[] tempC, double[] vapourPa) {
    this.firstHour = firstHour;
    this.tempC = tempC;
    this.vapourPa = vapourPa;
  }

  int hours() {
    return tempC.length;
  }

  static HourlyOutdoors invented(Instant from, int hours, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    long first = from.getEpochSecond() / 3600;
    double[] temp = new double[hours];
    double[] vapour = new double[hours];
    double weather = 0;
    double mass = 0;
    double wantedMass = 0;
    double dryness = 5;
    double wantedDryness = 5;
    double cloud = 0.5;
    for (int i = 0; i < hours; i++) {
      double year = 2 * Math.PI * ((first + i) / 8766.0 - 0.055);
      double hourOfDay = Math.floorMod(first + i, 24L);
      weather += -weather / 72 + 3.5 * Math.sqrt(2 / 72.0) * random.nextGaussian();
      if (random.nextDouble() < 1 / 96.0) {
        wantedMass = 3.0 * random.nextGaussian();
        wantedDryness = Math.max(0.8, 5 + 3 * random.nextGaussian());
      }
      mass += (wantedMass - mass) / 8;
      dryness += (wantedDryness - dryness) / 8 + 0.25 * random.nextGaussian();
      dryness = Math.max(0.3, dryness);
      cloud += (Math.min(1, 3 / dryness) - cloud) / 12 + 0.05 * random.nextGaussian();
      cloud = Math.min(1, Math.max(0, cloud));
      double swing = (3.2 - 1.8 * Math.cos(year)) * (1.25 - cloud);
      double mean = 10 - 9 * Math.cos(year) + weather + mass;
      double day = swing * Math.cos(2 * Math.PI * (hourOfDay - 15) / 24);
      temp[i] = mean + day + 0.25 * random.nextGaussian();
      double dew = Math.min(temp[i] - 0.1, mean - dryness + 0.2 * random.nextGaussian());
      vapour[i] = SaturationPressure.overWaterPa(Math.max(-39, dew));
    }
    return new HourlyOutdoors(first, temp, vapour);
  }

  /**
   * Reads lines {@code time,t_C,rh_pct,…}; hours that are missing are filled straight across, at
   * most six of them in a row.
   */
  static HourlyOutdoors read(Path file) throws IOException {
    List<double[]> rows = new ArrayList<>();
    for (String line : Files.readAllLines(file)) {
      String[] cells = line.split(",", -1);
      if (line.startsWith("#") || cells.length < 3 || !cells[0].matches("\\d{4}-.*")) {
        continue;
      }
      double t = Double.parseDouble(cells[1]);
      double pa = Double.parseDouble(cells[2]) / 100 * SaturationPressure.overWaterPa(t);
      rows.add(
          new double[] {Math.floorDiv(Instant.parse(cells[0]).getEpochSecond(), 3600L), t, pa});
    }
    long first = (long) rows.get(0)[0];
    int hours = (int) ((long) rows.get(rows.size() - 1)[0] - first) + 1;
    double[] temp = new double[hours];
    double[] vapour = new double[hours];
    double[] before = rows.get(0);
    for (double[] row : rows) {
      int from = (int) (before[0] - first);
      int to = (int) (row[0] - first);
      for (int i = from; i <= to; i++) {
        double share = to > from ? (i - from) / (double) (to - from) : 1;
        temp[i] = before[1] + share * (row[1] - before[1]);
        vapour[i] = before[2] + share * (row[2] - before[2]);
      }
      before = row;
    }
    return new HourlyOutdoors(first, temp, vapour);
  }

  double tempAt(double hour) {
    return at(tempC, hour);
  }

  double vapourAt(double hour) {
    return at(vapourPa, hour);
  }

  private double at(double[] values, double hour) {
    double x = Math.min(values.length - 1.001, Math.max(0, hour - firstHour - 0.5));
    int below = (int) x;
    return values[below] + (x - below) * (values[below + 1] - values[below]);
  }

  /** As if it were a room itself. */
  List<HourAir> asRoom() {
    List<HourAir> air = new ArrayList<>();
    for (int i = 0; i < tempC.length; i++) {
      air.add(HourAir.mean(firstHour + i, tempC[i], vapourPa[i]));
    }
    return air;
  }
}

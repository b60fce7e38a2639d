package coatwright.climate.forecast;

import coatwright.air.SaturationPressure;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.IntFunction;

/**
 * How good the forecast of a room's air is, over at least a year, beside "it stays as it is" and
 * the means of the last 7 and 14 days at that hour in the same run: two simulated rooms driven by
 * invented outdoor air, and, with {@code -Dcoatwright.outdoor=FILE} (hourly lines {@code
 * time,t_C,rh_pct}), the same rooms driven by a real outdoor year, and that year itself. {@code
 * -Dcoatwright.indoor=FILE} adds a real room.
 */
public final class ForecastBench {
  private static final ZoneId ZONE = ZoneId.of("Europe/Berlin");
  private static final int WARM_H = 35 * 24;
  private static final PrintStream OUT = System.out;
  private static final int[] LEADS = BackTest.LEADS;

  private ForecastBench() {}

  public static void main(String[] args) throws IOException {
    boolean quick = args.length > 0 && args[0].equals("quick");
    HourlyOutdoors invented =
        HourlyOutdoors.invented(Instant.parse("2024-01-01T00:00:00Z"), 24 * 410, 20_261_125L);
    outdoors("invented outdoor air", invented, quick);
    String file = System.getProperty("coatwright.outdoor", "");
    if (file.isBlank()) {
      OUT.println("\nNo real outdoor year: give one with -Dcoatwright.outdoor=FILE.");
    } else {
      outdoors("real outdoor year", HourlyOutdoors.read(Path.of(file)), quick);
    }
    String indoor = System.getProperty("coatwright.indoor", "");
    if (indoor.isBlank()) {
      OUT.println(
          "\nNo real room: give one with -Dcoatwright.indoor=FILE. The real indoor series among the"
              + " tests' figures lasts six hours, too short for any of this.");
    } else {
      List<HourAir> room = HourlyOutdoors.read(Path.of(indoor)).asRoom();
      room("real room", room, quick);
    }
    if (!quick) {
      rebuild(SimulatedRoom.hours(SimulatedRoom.Kind.HEATED_SHOP, invented, ZONE, 1));
    }
  }

  private static void outdoors(String name, HourlyOutdoors outdoors, boolean quick) {
    for (SimulatedRoom.Kind kind : SimulatedRoom.Kind.values()) {
      String what = kind == SimulatedRoom.Kind.HEATED_SHOP ? "heated shop" : "bare room";
      List<HourAir> air = SimulatedRoom.hours(kind, outdoors, ZONE, 7);
      room(what + ", " + name, air, quick);
      if (!quick) {
        withOutdoorForecast(what + ", " + name, air, outdoors);
      }
    }
    room(name + " itself", outdoors.asRoom(), quick);
  }

  private static void room(String name, List<HourAir> air, boolean quick) {
    long began = System.nanoTime();
    BackTest warm = new BackTest(air, ZONE);
    if (quick) {
      warm.middlesOnly();
    }
    warm.score(WARM_H, Integer.MAX_VALUE);
    OUT.printf(
        Locale.ROOT,
        "%n#### %s: %d hours, %d origins after 35 days (%.0f s)%n%n",
        name,
        air.size(),
        warm.origins,
        (System.nanoTime() - began) / 1e9);
    head("");
    for (int q = 0; q < 3; q++) {
      int quantity = q;
      row(BackTest.QUANTITIES[q] + ": error, mean", l -> text(warm.mean(quantity, l, 0)));
      row("over \"it stays\"", l -> text(warm.ratioToStaying(quantity, l)));
      row("over the better mean of days", l -> text(warm.ratioToBetterMean(quantity, l)));
      if (!quick) {
        row(
            "80 % range holds, % (width)",
            l ->
                "%.0f (%s)"
                    .formatted(
                        warm.coveragePct(quantity, l),
                        text(warm.width[quantity][l] / warm.origins)));
      }
    }
    if (!quick) {
      windows(warm);
      cold(air);
    }
  }

  private static void windows(BackTest t) {
    row("fine windows, share", l -> text(t.wereFine[l] / (double) t.origins));
    row("Brier, ours", l -> three(t.brier[l] / t.origins));
    row("Brier, \"it stays\"", l -> three(t.brierStays[l] / t.origins));
    row("Brier, that hour's 30 days", l -> three(t.brierFrequency[l] / t.origins));
    row("skill against the 30 days", l -> text(t.skill(l)));
    row(
        "\"go\" at 0.8: wrong, share",
        l -> t.said[l] == 0 ? "none said" : text(t.saidWrong[l] / (double) t.said[l]));
    row("fine windows offered, share", l -> text(t.offered[l] / (double) t.wereFine[l]));
    StringBuilder line = new StringBuilder("\nSaid and seen, all leads: ");
    for (int bin = 0; bin < 10; bin++) {
      if (t.binCount[bin] > 0) {
        line.append(
            "%s%.2f %.2f"
                .formatted(
                    bin == 0 ? "" : ", ",
                    t.binSaid[bin] / t.binCount[bin],
                    t.binSeen[bin] / t.binCount[bin]));
      }
    }
    OUT.println(line + ".");
  }

  /** Sixteen starts a year, each of two weeks. */
  private static void cold(List<HourAir> air) {
    int[][] stretches = {{6, 24}, {24, 48}, {48, 7 * 24}, {7 * 24, 14 * 24}};
    String[] names = {"hours 6-24", "day 2", "days 3-7", "days 8-14"};
    OUT.println();
    head(" from a start");
    for (int s = 0; s < stretches.length; s++) {
      double[][][] sums = new double[2][LEADS.length][2];
      double[][] inside = new double[2][LEADS.length];
      int origins = 0;
      int apart = (air.size() - 14 * 24 - 80) / 16;
      for (int start = 0; start < 16; start++) {
        BackTest one =
            new BackTest(air.subList(start * apart, start * apart + 14 * 24 + 80), ZONE)
                .score(stretches[s][0], stretches[s][1]);
        origins += one.origins;
        for (int q = 0; q < 2; q++) {
          for (int l = 0; l < LEADS.length; l++) {
            sums[q][l][0] += one.absolute[q][l][0];
            sums[q][l][1] += one.absolute[q][l][1];
            inside[q][l] += one.inside[q][l];
          }
        }
      }
      int all = origins;
      for (int q = 0; q < 2; q++) {
        int quantity = q;
        row(
            names[s] + " " + BackTest.QUANTITIES[q] + ": over \"it stays\"",
            l -> text(sums[quantity][l][0] / sums[quantity][l][1]));
        row("80 % range holds, %", l -> "%.0f".formatted(100 * inside[quantity][l] / all));
      }
    }
  }

  /** An outdoor forecast whose error grows with its age, a new one every six hours. */
  private static void withOutdoorForecast(String name, List<HourAir> air, HourlyOutdoors outdoors) {
    BackTest test = new BackTest(air, ZONE);
    SplittableRandom random = new SplittableRandom(11);
    List<OutsideCourse> courses = new ArrayList<>();
    long first = air.get(0).hour();
    for (long hour = first; hour < first + air.size(); hour += 6) {
      courses.add(erring(outdoors, hour, random));
    }
    test.outside(hour -> courses.get((int) Math.min(courses.size() - 1, (hour - first) / 6)));
    test.score(WARM_H, Integer.MAX_VALUE);
    OUT.printf("%n%s, with an outdoor forecast of realistic error%n%n", name);
    head("");
    for (int q = 0; q < 3; q++) {
      int quantity = q;
      row(BackTest.QUANTITIES[q] + ": error, mean", l -> text(test.mean(quantity, l, 0)));
    }
    row("skill against the 30 days", l -> text(test.skill(l)));
  }

  /** Temperature off by 1.9 to 2.6 K, dew point by 1.9 to 2.8 K, wandering along the course. */
  private static OutsideCourse erring(HourlyOutdoors outdoors, long hour, SplittableRandom random) {
    int n = 90;
    double[] temp = new double[n];
    double[] vapour = new double[n];
    double a = random.nextGaussian();
    double b = random.nextGaussian();
    double keeps = Math.exp(-1 / 12.0);
    double fresh = Math.sqrt(1 - keeps * keeps);
    for (int i = 0; i < n; i++) {
      a = keeps * a + fresh * random.nextGaussian();
      b = keeps * b + fresh * random.nextGaussian();
      double at = hour + i + 0.5;
      double t = outdoors.tempAt(at);
      double grown = Math.min(1, i / 72.0);
      temp[i] = t + (1.9 + 0.7 * grown) * a;
      double dew = SaturationPressure.dewPointC(outdoors.vapourAt(at));
      double dewErring = Math.min(temp[i], dew + (1.9 + 0.9 * grown) * b);
      vapour[i] = SaturationPressure.overWaterPa(dewErring);
    }
    return new OutsideCourse(hour, hour, temp, vapour);
  }

  /** What a start costs: a year of hours gone through anew. */
  private static void rebuild(List<HourAir> air) {
    List<HourAir> year = air.subList(0, 8760);
    double[] ms = new double[5];
    for (int run = 0; run < ms.length; run++) {
      long began = System.nanoTime();
      RoomForecaster forecaster = new RoomForecaster(ZONE);
      year.forEach(forecaster::add);
      OUT.flush();
      if (forecaster.forecast().isEmpty()) {
        throw new IllegalStateException("nothing was forecast");
      }
      ms[run] = (System.nanoTime() - began) / 1e6;
    }
    OUT.printf(
        Locale.ROOT,
        "%nA year of hours gone through: %.0f ms the first time, then %.0f.%n",
        ms[0],
        Arrays.stream(ms).min().orElseThrow());
  }

  private static void head(String what) {
    OUT.println("| hours ahead" + what + " | 1 | 3 | 6 | 12 | 24 | 48 | 72 |");
    OUT.println("|---|---|---|---|---|---|---|---|");
  }

  private static void row(String name, IntFunction<String> cell) {
    StringBuilder line = new StringBuilder("| " + name + " |");
    for (int l = 0; l < LEADS.length; l++) {
      line.append(' ').append(cell.apply(l)).append(" |");
    }
    OUT.println(line);
  }

  private static String text(double value) {
    return String.format(Locale.ROOT, value >= 20 ? "%.0f" : value >= 5 ? "%.1f" : "%.2f", value);
  }

  private static String three(double value) {
    return String.format(Locale.ROOT, "%.3f", value);
  }
}

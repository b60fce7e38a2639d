package coatwright.film;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * How long the owner's mini-PC is busy with one full run: six coats and twelve days (goal under 8
 * ms), and the hour after a single coat (goal under 1 ms). Its peer in the same run is the same job
 * without the merging of old coats, which is what one would write first. Read p0.00 and p0.50 on a
 * machine that has other work.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 6, time = 1)
public class FilmBench {
  private static final double DAY_S = 86400;
  private static final double[] SIX_COATS_S = {0, 900, 1800, 2700, 6300, 8700};

  private final FilmSimulation usual =
      new FilmSimulation(FilmParameters.SHELLAC, SimulationOptions.DEFAULT);
  private final FilmSimulation unmerged =
      new FilmSimulation(FilmParameters.SHELLAC, SimulationOptions.DEFAULT.withMerging(false));
  private final FilmSimulation fast =
      new FilmSimulation(FilmParameters.SHELLAC, SimulationOptions.FAST);
  private final FilmJob sixCoats = job(SIX_COATS_S, AirCourse.steady(20, 0.5, 0.1));
  private final FilmJob oneCoat = job(new double[] {0}, AirCourse.steady(28, 0.8, 0.1));
  private final FilmJob realClimate = job(SIX_COATS_S, quarterHours());

  private static FilmJob job(double[] atS, AirCourse air) {
    List<LaidCoat> coats = new ArrayList<>();
    for (double at : atS) {
      coats.add(LaidCoat.plain(at, 75, 179.74, 95));
    }
    return FilmJob.of(coats, air, air.airTempCAt(0));
  }

  /** Twelve days of day and night, a knot every quarter of an hour. */
  private static AirCourse quarterHours() {
    int n = 12 * 96 + 1;
    double[] timeS = new double[n];
    double[] tempC = new double[n];
    double[] rh = new double[n];
    for (int i = 0; i < n; i++) {
      timeS[i] = 900.0 * i;
      tempC[i] = 20 + 3 * Math.sin(2 * Math.PI * i / 96);
      rh[i] = 0.5 - 0.1 * Math.sin(2 * Math.PI * i / 96);
    }
    return new AirCourse(timeS, tempC, rh, 0.1);
  }

  @Benchmark
  public FilmRun sixCoatsTwelveDays() {
    return usual.run(sixCoats, 8700 + 12 * DAY_S);
  }

  @Benchmark
  public FilmRun sixCoatsTwelveDaysUnmergedPeer() {
    return unmerged.run(sixCoats, 8700 + 12 * DAY_S);
  }

  @Benchmark
  public FilmRun sixCoatsTwelveDaysFast() {
    return fast.run(sixCoats, 8700 + 12 * DAY_S);
  }

  @Benchmark
  public FilmRun sixCoatsTwelveDaysOfQuarterHourClimate() {
    return usual.run(realClimate, 8700 + 12 * DAY_S);
  }

  @Benchmark
  public FilmRun oneCoatOneHour() {
    return usual.run(oneCoat, 3600);
  }
}

package coatwright.air;

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
 * Moist air over a shop's states, 15 to 40 °C and 40 to 95 % RH in whole steps (1,456 of them; the
 * dew point stays above freezing, where the peer changes from water to ice). One operation is one
 * pass over all of them. The limit is the same formulas without records, refusals and lambdas.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 500, timeUnit = TimeUnit.MILLISECONDS)
@Measurement(iterations = 4, time = 500, timeUnit = TimeUnit.MILLISECONDS)
public class AirBench {
  static final int COLDEST_C = 15;
  static final int WARMEST_C = 40;
  static final int DRIEST_PCT = 40;
  static final int DAMPEST_PCT = 95;
  static final int STATES = (WARMEST_C - COLDEST_C + 1) * (DAMPEST_PCT - DRIEST_PCT + 1);

  /** One answer about one state. */
  private interface Answer {
    double of(double airTempC, double rhPct);
  }

  private static double pass(Answer answer) {
    double sum = 0;
    for (int t = COLDEST_C; t <= WARMEST_C; t++) {
      for (int rh = DRIEST_PCT; rh <= DAMPEST_PCT; rh++) {
        sum += answer.of(t, rh);
      }
    }
    return sum;
  }

  @Benchmark
  public double dewPoint() {
    return pass((t, rh) -> MoistAir.of(t, rh).dewPointC());
  }

  @Benchmark
  public double wetBulb() {
    return pass((t, rh) -> MoistAir.of(t, rh).wetBulbC());
  }

  @Benchmark
  public double humidityRatio() {
    return pass((t, rh) -> MoistAir.of(t, rh).humidityRatio());
  }

  @Benchmark
  public double enthalpy() {
    return pass((t, rh) -> MoistAir.of(t, rh).enthalpyKjKg());
  }

  @Benchmark
  public double allFour() {
    return pass(
        (t, rh) -> {
          MoistAir air = MoistAir.of(t, rh);
          return air.dewPointC() + air.wetBulbC() + air.humidityRatio() + air.enthalpyKjKg();
        });
  }

  @Benchmark
  public double allFourTight() {
    double sum = 0;
    for (int t = COLDEST_C; t <= WARMEST_C; t++) {
      for (int rh = DRIEST_PCT; rh <= DAMPEST_PCT; rh++) {
        sum += TightAir.allFour(t, rh);
      }
    }
    return sum;
  }

  @Benchmark
  public double humidityRatioTight() {
    double sum = 0;
    for (int t = COLDEST_C; t <= WARMEST_C; t++) {
      for (int rh = DRIEST_PCT; rh <= DAMPEST_PCT; rh++) {
        sum += TightAir.humidityRatio(t, rh);
      }
    }
    return sum;
  }
}

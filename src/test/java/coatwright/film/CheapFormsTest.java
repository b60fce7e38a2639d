package coatwright.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The cheap forms with the full simulation as their oracle. */
class CheapFormsTest {
  private static final FilmParameters SET = FilmParameters.SHELLAC;
  private static final int DAY_MIN = 1440;

  private record Wet(FilmParameters set, LaidCoat coat) {}

  private static List<Wet> coats() {
    List<Wet> coats = new ArrayList<>();
    for (double cutLb : new double[] {1, 1.5, 2}) {
      for (double wetUm : new double[] {40, 75, 120}) {
        coats.add(new Wet(SET, Jobs.coat(wetUm, cutLb, 95, 0)));
      }
    }
    coats.add(new Wet(SET, Jobs.coat(75, 1.5, 95, 3)));
    for (LacquerBlend blend : LacquerBlend.ALL) {
      coats.add(new Wet(FilmParameters.LACQUER, Jobs.lacquer(blend)));
    }
    return coats;
  }

  @Test
  void threeCellsTellCloudingWithinOnePerCentOfSixteen() {
    SimulationOptions fine =
        SimulationOptions.DEFAULT
            .withGrid(16, 1.35)
            .withTolerance(1e-5)
            .withHaze(false, Double.POSITIVE_INFINITY);
    for (Wet wet : coats()) {
      FilmSimulation full = new FilmSimulation(wet.set(), fine);
      FilmSimulation cheap = new FilmSimulation(wet.set(), SimulationOptions.CLOUDING);
      for (double airC : new double[] {12, 20, 28, 36}) {
        for (double rh : new double[] {0.3, 0.55, 0.8, 0.95}) {
          FilmJob job = FilmJob.of(List.of(wet.coat()), AirCourse.steady(airC, rh, 0.1), airC);
          CoatOutcome oracle = full.run(job, 3600).lastCoat();
          CoatOutcome quick = cheap.run(job, 3600).lastCoat();
          assertThat(quick.peakS())
              .as("%s at %s/%s", wet.coat(), airC, rh)
              .isCloseTo(oracle.peakS(), withinPercentage(1));
          assertThat(quick.filmLowC()).isCloseTo(oracle.filmLowC(), within(0.1));
          assertThat(quick.filmMinusDewK()).isCloseTo(oracle.filmMinusDewK(), within(0.1));
        }
      }
    }
  }

  /** A shop by the minute for so many days: day and night, drift, doors, a heater, sensor noise. */
  private static AirCourse minutes(String kind, int seed, int days) {
    int n = days * DAY_MIN;
    double[] t = new double[n];
    double[] c = new double[n];
    double[] rh = new double[n];
    Random random = new Random(seed);
    double drift = 0;
    double door = 0;
    for (int i = 0; i < n; i++) {
      t[i] = 60.0 * i;
      drift = 0.98 * drift + 0.04 * random.nextGaussian();
      door = 0.93 * (kind.equals("doors") && random.nextInt(200) == 0 ? -3 : door);
      double heater = kind.equals("heater") && i / 480 % 2 == 0 ? 5 : 0;
      double warm = heater * Math.min(1, i % 480 / 40.0);
      double day = Math.sin(2 * Math.PI * i / DAY_MIN);
      c[i] = 19 + 3 * day + drift + door + warm + 0.05 * random.nextGaussian();
      rh[i] = 0.55 - 0.1 * day - 0.01 * drift - 0.02 * door + 0.003 * random.nextGaussian();
    }
    return new AirCourse(t, c, rh, 0.1);
  }

  @ParameterizedTest(name = "{0}, {1}")
  @CsvSource({"quiet, 0", "quiet, 1", "doors, 0", "doors, 3", "heater, 0", "heater, 2"})
  void aThinnedRecordMovesNoRubOutByAThousandthOfADay(String kind, int seed) {
    assertRubOutStays(SET, Jobs.sixTimes(Jobs.usualCoat()), minutes(kind, seed, 12));
  }

  /** Lacquer hardens for weeks, and its record is thinned by its own set's clock. */
  @ParameterizedTest(name = "{0}, {1}")
  @CsvSource({"quiet, 0", "doors, 0", "heater, 0"})
  void norOfLacquer(String kind, int seed) {
    List<LaidCoat> coats = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      coats.add(Jobs.lacquer(LacquerBlend.REGULAR).at(3600.0 * i));
    }
    assertRubOutStays(FilmParameters.LACQUER, coats, minutes(kind, seed, 24));
  }

  private static void assertRubOutStays(FilmParameters set, List<LaidCoat> coats, AirCourse whole) {
    AirCourse thin = whole.thinnedByClock(set.diffusion().glassEnergyJPerMol(), 1e-3 * Jobs.DAY_S);
    assertThat(thin.size()).isLessThan(whole.size() / 20);
    FilmSimulation simulation =
        new FilmSimulation(
            set, SimulationOptions.DEFAULT.withHaze(false, Double.POSITIVE_INFINITY));
    double until = whole.knotTimeS(whole.size() - 1);
    double full = simulation.run(FilmJob.of(coats, whole, 19), until).rubOutS().orElseThrow();
    double less = simulation.run(FilmJob.of(coats, thin, 19), until).rubOutS().orElseThrow();
    assertThat(less).isCloseTo(full, within(1e-3 * Jobs.DAY_S));
  }

  @ParameterizedTest(name = "{0}, {1}")
  @CsvSource({"quiet, 5", "doors, 6", "heater, 7"})
  void thinningKeepsTheFilmsClockAndEveryKnotWithinItsTolerance(String kind, int seed) {
    double energy = SET.diffusion().glassEnergyJPerMol();
    AirCourse whole = minutes(kind, seed, 12);
    AirCourse thin = whole.thinnedByClock(energy, 60);
    EquivalentTime clock = new EquivalentTime(whole, energy);
    EquivalentTime thinClock = new EquivalentTime(byTheMinute(thin, whole), energy);
    double start = clock.at(0);
    double thinStart = thinClock.at(0);
    for (int i = 0; i < whole.size(); i++) {
      double t = whole.knotTimeS(i);
      assertThat(thinClock.at(t) - thinStart).isCloseTo(clock.at(t) - start, within(60.0));
      assertThat(thin.airTempCAt(t)).isCloseTo(whole.knotTempC(i), within(0.3 + 1e-9));
      assertThat(thin.rhFractionAt(t)).isCloseTo(whole.knotRhFraction(i), within(0.01 + 1e-9));
    }
  }

  /** The same lines in short pieces, so that the clock is read finely on either. */
  private static AirCourse byTheMinute(AirCourse thin, AirCourse whole) {
    double[] t = whole.timeS();
    double[] c = new double[t.length];
    double[] rh = new double[t.length];
    for (int i = 0; i < t.length; i++) {
      c[i] = thin.airTempCAt(t[i]);
      rh[i] = thin.rhFractionAt(t[i]);
    }
    return new AirCourse(t, c, rh, thin.draughtMPerS());
  }
}

package coatwright.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.OutOfRange;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class AirCourseTest {
  private static final AirCourse RISING =
      new AirCourse(
          new double[] {0, 100, 300}, new double[] {18, 20, 26}, new double[] {.5, .6, .4}, 0.1);

  @Test
  void isAStraightLineBetweenKnotsAndConstantBeyondThem() {
    assertThat(RISING.airTempCAt(50)).isCloseTo(19, within(1e-12));
    assertThat(RISING.rhFractionAt(200)).isCloseTo(0.5, within(1e-12));
    assertThat(RISING.airTempCAt(-9)).isEqualTo(18);
    assertThat(RISING.airTempCAt(1e6)).isEqualTo(26);
    assertThat(RISING.airTempCAt(100)).isEqualTo(20);
  }

  @Test
  void theIntegratorsCursorReadsTheSameAir() {
    AirCursor cursor = new AirCursor(RISING, -50);
    assertThat(cursor.nextKnotS()).isEqualTo(0);
    assertThat(cursor.changing()).isFalse();
    assertThat(cursor.tempC(-20)).isEqualTo(18);
    for (double t : new double[] {0, 30, 100, 170, 300, 900}) {
      while (t >= cursor.nextKnotS()) {
        cursor.pass();
      }
      assertThat(cursor.tempC(t)).isCloseTo(RISING.airTempCAt(t), within(1e-12));
      assertThat(cursor.rhFraction(t)).isCloseTo(RISING.rhFractionAt(t), within(1e-12));
    }
    assertThat(cursor.changing()).isFalse();
  }

  @Test
  void keepsItsOwnCopyAndIsEqualByContent() {
    double[] times = {0, 10};
    double[] temps = {20, 21};
    double[] rh = {.5, .5};
    AirCourse air = new AirCourse(times, temps, rh, 0);
    AirCourse same = new AirCourse(times, temps, rh, 0);
    assertThat(air).isEqualTo(same).hasSameHashCodeAs(same);
    temps[0] = 0;
    air.airTempC()[1] = 0;
    assertThat(air).isEqualTo(same);
    assertThat(new AirCourse(times, temps, rh, 0)).isNotEqualTo(same);
  }

  @Test
  void refusesAirOutsideTheModelAndTimesThatRunBackwards() {
    assertThatThrownBy(() -> AirCourse.steady(50, 0.5, 0.1))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("air temperature is 50");
    assertThatThrownBy(() -> AirCourse.steady(20, 50, 0.1)).isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> AirCourse.steady(20, Double.NaN, 0.1)).isInstanceOf(OutOfRange.class);
    double[] two = {5, 5};
    assertThatThrownBy(() -> new AirCourse(two, new double[] {20, 20}, new double[] {.5, .5}, 0))
        .hasMessageContaining("must rise");
    assertThatThrownBy(() -> new AirCourse(two, new double[] {20}, new double[] {.5, .5}, 0))
        .hasMessageContaining("2 times, 1 temperatures");
  }

  @Property(tries = 100, seed = "20261125")
  void thinningKeepsEveryDroppedKnotWithinItsTolerance(
      @ForAll @IntRange(min = 2, max = 300) int n, @ForAll int seed) {
    Random random = new Random(seed);
    double[] t = new double[n];
    double[] c = new double[n];
    double[] rh = new double[n];
    for (int i = 0; i < n; i++) {
      t[i] = i == 0 ? 0 : t[i - 1] + 1 + 100 * random.nextDouble();
      c[i] = i == 0 ? 20 : Math.max(5, Math.min(35, c[i - 1] + random.nextGaussian() * 0.2));
      rh[i] = i == 0 ? 0.5 : Math.max(.2, Math.min(.9, rh[i - 1] + random.nextGaussian() * 0.006));
    }
    AirCourse air = new AirCourse(t, c, rh, 0.1);
    AirCourse thin = air.thinned(0.3, 0.01);
    assertThat(thin.size()).isBetween(2, n);
    for (int i = 0; i < n; i++) {
      assertThat(thin.airTempCAt(t[i])).isCloseTo(c[i], within(0.3 + 1e-9));
      assertThat(thin.rhFractionAt(t[i])).isCloseTo(rh[i], within(0.01 + 1e-9));
    }
  }

  @Test
  void aDayOfMinutesThinsToAHandfulOfKnotsWithoutMovingTheDate() {
    int n = 12 * 1440;
    double[] t = new double[n];
    double[] c = new double[n];
    double[] rh = new double[n];
    Random random = new Random(5);
    for (int i = 0; i < n; i++) {
      t[i] = 60.0 * i;
      c[i] = 19 + 3 * Math.sin(2 * Math.PI * i / 1440) + 0.05 * random.nextGaussian();
      rh[i] = 0.55 - 0.1 * Math.sin(2 * Math.PI * i / 1440) + 0.002 * random.nextGaussian();
    }
    AirCourse minutes = new AirCourse(t, c, rh, 0.1);
    AirCourse thin = minutes.thinned(0.3, 0.01);
    assertThat(thin.size()).isLessThan(n / 50);
    var simulation = new FilmSimulation(FilmParameters.SHELLAC, SimulationOptions.FAST);
    var coats = Jobs.sixTimes(Jobs.usualCoat());
    double full =
        simulation.run(FilmJob.of(coats, minutes, 19), 10 * Jobs.DAY_S).rubOutS().orElseThrow();
    double less =
        simulation.run(FilmJob.of(coats, thin, 19), 10 * Jobs.DAY_S).rubOutS().orElseThrow();
    assertThat(less).isCloseTo(full, within(3e-3 * full));
  }
}

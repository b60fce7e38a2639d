package coatwright.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class EquivalentTimeTest {
  private static AirCourse dayAndNight() {
    double[] timeS = new double[24 * 4 + 1];
    double[] tempC = new double[timeS.length];
    double[] rh = new double[timeS.length];
    for (int i = 0; i < timeS.length; i++) {
      timeS[i] = i * 3600;
      tempC[i] = 18 - 6 * Math.cos(2 * Math.PI * i / 24);
      rh[i] = 0.5;
    }
    return new AirCourse(timeS, tempC, rh, 0.1);
  }

  @Test
  void runsWithTheClockOnTheWallAtTwentyDegrees() {
    EquivalentTime clock = new EquivalentTime(AirCourse.steady(20, 0.5, 0.1), 41e3);
    assertThat(clock.at(86_400) - clock.at(0)).isCloseTo(86_400, within(1e-6));
  }

  /** exp(−41000/8.314 (1/283.15 − 1/293.15)) = 0.5519, by hand. */
  @Test
  void runsAtHalfThePaceAtTenDegrees() {
    EquivalentTime clock = new EquivalentTime(AirCourse.steady(10, 0.5, 0.1), 41e3);
    assertThat(clock.at(3600) - clock.at(0)).isCloseTo(0.5519 * 3600, withinPercentage(0.1));
  }

  @Property(tries = 200, seed = "20261125")
  void turnsBackToTheMomentItCameFrom(@ForAll @DoubleRange(min = -1e5, max = 1e6) double atS) {
    EquivalentTime clock = new EquivalentTime(dayAndNight(), 41e3);
    assertThat(clock.momentOf(clock.at(atS))).isCloseTo(atS, within(1e-4));
  }

  /** The clock is convex in temperature, so swings about a mean age a film faster than the mean. */
  @Test
  void aDayAndNightIsWorthMoreThanItsMean() {
    double steadyC = EquivalentTime.steadyTempC(dayAndNight(), 41e3, 0, 4 * 86_400);
    assertThat(steadyC).isBetween(18.1, 19.0);
  }
}

package coatwright.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class AirCoursesTest {
  private static final AirCourse AIR =
      new AirCourse(
          new double[] {0, 1000, 2000},
          new double[] {20, 22, 18},
          new double[] {0.5, 0.99, 0.04},
          0.1);

  @Test
  void warmsOneStretchAndLeavesTheRest() {
    AirCourse warmer = AirCourses.warmerBetween(AIR, 400, 600, 2);
    assertThat(warmer.airTempCAt(500)).isCloseTo(AIR.airTempCAt(500) + 2, within(1e-9));
    assertThat(warmer.airTempCAt(398)).isCloseTo(AIR.airTempCAt(398), within(1e-9));
    assertThat(warmer.airTempCAt(602)).isCloseTo(AIR.airTempCAt(602), within(1e-9));
    assertThat(warmer.rhFractionAt(500)).isCloseTo(AIR.rhFractionAt(500), within(1e-9));
  }

  @Test
  void warmsAllThatIsStillToCome() {
    AirCourse warmer = AirCourses.warmerBetween(AIR, 1500, Double.POSITIVE_INFINITY, 1);
    assertThat(warmer.airTempCAt(1e7)).isEqualTo(19);
    assertThat(warmer.airTempCAt(1400)).isCloseTo(AIR.airTempCAt(1400), within(1e-9));
  }

  @Test
  void anErrorOfTheHygrometerStopsAtSaturation() {
    AirCourse damper = AirCourses.damper(AIR, 0.05);
    assertThat(damper.rhFractionAt(1000)).isEqualTo(1);
    assertThat(AirCourses.damper(AIR, -0.05).rhFractionAt(2000)).isEqualTo(0.03);
  }
}

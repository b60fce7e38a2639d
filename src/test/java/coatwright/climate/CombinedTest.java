package coatwright.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class CombinedTest {
  private static final Instant NOON = Instant.parse("2026-03-14T12:00:00Z");

  @Test
  void findsTheSameAirBehindTwoHumidities() {
    // 27.3 °C at 31 % and 22.3 °C at 42 % hold the same vapour, 11.2 and 11.3 hPa by the Magnus
    // formula of the WMO (6.112 hPa, 17.62, 243.12 °C).
    SensorAir warm = air("warm", 27.3, 31, 0.3, 2);
    SensorAir cool = air("cool", 22.3, 42, 0.3, 2);
    assertThat(warm.vapourPressurePa()).isCloseTo(1124, within(6.0));
    assertThat(cool.vapourPressurePa()).isCloseTo(1131, within(6.0));
    Combined both = Combined.of(List.of(warm, cool));
    assertThat(both.vapourPressurePa()).isBetween(warm.vapourPressurePa(), cool.vapourPressurePa());
    // The plain mean of the two humidities would be 36.5 %; the air of the colder one is 42 %.
    assertThat(both.point(NOON).rhPct()).isCloseTo(42, within(0.5));
    assertThat(both.airTempC()).isEqualTo(22.3);
    assertThat(both.trouble().orElseThrow())
        .contains("agree about the vapour", "27.3 °C and 22.3 °C", "warm stands in a warm spot");
  }

  @Test
  void weighsTwoByTheInverseSquareOfTheirUncertainty() {
    Combined both =
        Combined.of(List.of(air("fine", 20.0, 50, 0.2, 2), air("rough", 20.5, 50, 0.4, 4)));
    // Weights 25 and 6.25: the fine one counts four times.
    assertThat(both.airTempC()).isCloseTo(20.1, within(1e-9));
    assertThat(both.temperatureErrorK()).isCloseTo(1 / Math.sqrt(25 + 6.25), within(1e-9));
  }

  @Test
  void takesTheMoisterAirWhenTwoDisagree() {
    SensorAir dry = air("dry", 20, 40, 0.3, 2);
    SensorAir moist = air("moist", 20, 60, 0.3, 2);
    Combined both = Combined.of(List.of(dry, moist));
    assertThat(both.disagree()).isTrue();
    assertThat(both.vapourPressurePa()).isEqualTo(moist.vapourPressurePa());
    assertThat(both.trouble().orElseThrow()).contains("dry and moist disagree", "higher is used");
  }

  @Test
  void letsTheMedianOfThreeOutvoteOne() {
    SensorAir one = air("one", 20, 50, 0.3, 2);
    SensorAir two = air("two", 20.2, 51, 0.3, 2);
    SensorAir off = air("off", 27, 90, 0.3, 2);
    Combined all = Combined.of(List.of(off, one, two));
    assertThat(all.airTempC()).isEqualTo(20.2);
    assertThat(all.vapourPressurePa()).isEqualTo(two.vapourPressurePa());
    assertThat(all.disagree()).isFalse();
    assertThat(all.trouble().orElseThrow()).startsWith("off stands apart");
  }

  @Property(seed = "20261125")
  void oneSensorIsItself(
      @ForAll @DoubleRange(min = -20, max = 45) double tempC,
      @ForAll @DoubleRange(min = 1, max = 100) double rhPct) {
    AirPoint point = Combined.of(List.of(air("only", tempC, rhPct, 0.3, 2))).point(NOON);
    assertThat(point.airTempC()).isEqualTo(tempC);
    assertThat(point.rhPct()).isCloseTo(rhPct, within(1e-9));
    assertThat(point.dewPointC()).isLessThanOrEqualTo(tempC);
  }

  @Property(seed = "20261125")
  void twoNeverLieOutsideEachOther(
      @ForAll @DoubleRange(min = 0, max = 40) double tempA,
      @ForAll @DoubleRange(min = 0, max = 40) double tempB,
      @ForAll @DoubleRange(min = 5, max = 100) double rhA,
      @ForAll @DoubleRange(min = 5, max = 100) double rhB) {
    SensorAir a = air("a", tempA, rhA, 0.3, 2);
    SensorAir b = air("b", tempB, rhB, 0.5, 3);
    Combined both = Combined.of(List.of(a, b));
    assertThat(both.airTempC())
        .isBetween(Math.min(tempA, tempB) - 1e-9, Math.max(tempA, tempB) + 1e-9);
    double slack = 1e-9 * (a.vapourPressurePa() + b.vapourPressurePa());
    assertThat(both.vapourPressurePa())
        .isBetween(
            Math.min(a.vapourPressurePa(), b.vapourPressurePa()) - slack,
            Math.max(a.vapourPressurePa(), b.vapourPressurePa()) + slack);
    assertThat(both.point(NOON).rhPct()).isLessThanOrEqualTo(100);
  }

  private static SensorAir air(
      String name, double tempC, double rhPct, double errorK, double errorPct) {
    return SensorAir.of(name, NOON, tempC, rhPct, errorK, errorPct).orElseThrow();
  }
}

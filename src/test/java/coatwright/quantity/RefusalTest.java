package coatwright.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RefusalTest {
  @Test
  void aValueWithinTheRangeIsHandedBack() {
    assertThat(OutOfRange.check("air temperature", -40, "°C", -40, 60)).isEqualTo(-40);
    assertThat(OutOfRange.check("air temperature", 60, "°C", -40, 60)).isEqualTo(60);
  }

  @Test
  void aValueOutsideIsNamedWithItsUnitAndLimits() {
    assertThatThrownBy(() -> OutOfRange.check("air temperature", -44, "°C", -40, 60))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("air temperature is -44.0 °C; this model holds from -40.0 to 60.0 °C");
  }

  @Test
  void aValueJustOutsideIsNotRoundedOntoTheLimit() {
    assertThatThrownBy(() -> OutOfRange.check("relative humidity", 100.0000001, "%", 0, 100))
        .hasMessageStartingWith("relative humidity is 100.0000001 %;");
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void neitherNanNorInfinityIsEverInRange(double value) {
    assertThatThrownBy(
            () ->
                OutOfRange.check(
                    "share", value, "", Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY))
        .isInstanceOf(OutOfRange.class)
        .hasMessageStartingWith("share is ");
  }

  @Test
  void severalFaultsAreAllListedWithTheirLines() {
    RefusedInput refusal =
        new RefusedInput(
            List.of(
                Fault.of("margin \"2,5\"", "the decimal mark is a point", "write 2.5K").onLine(8),
                Fault.of("port", "missing", "give a device such as by-id/usb-...")));
    assertThat(refusal)
        .hasMessage(
            """
            2 faults:
              - line 8: margin "2,5": the decimal mark is a point; write 2.5K
              - port: missing; give a device such as by-id/usb-...\
            """);
  }

  @Test
  void aRefusalWithoutAFaultCannotBeMade() {
    assertThatThrownBy(() -> new RefusedInput(List.of()))
        .isInstanceOf(IllegalArgumentException.class);
  }
}

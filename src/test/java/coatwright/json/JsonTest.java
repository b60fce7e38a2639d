package coatwright.json;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** How the house writes what it answers. */
class JsonTest {
  record Air(double rhPct, OptionalDouble woodTempC, Double dewPointC) {}

  @Test
  void numbersComeWithoutTheLastBitsNoise() {
    Air air = new Air(0.552 * 100, OptionalDouble.of(0.1 + 0.2), 1 / 3.0);

    assertThat(Json.line(air))
        .isEqualTo("{\"rhPct\":55.2,\"woodTempC\":0.3,\"dewPointC\":0.333333333333}");
  }

  @Test
  void whatIsUnknownIsLeftOut() {
    assertThat(Json.line(new Air(50, OptionalDouble.empty(), 1.0)))
        .isEqualTo("{\"rhPct\":50.0,\"dewPointC\":1.0}");
  }

  @Property(seed = "20261125")
  void roundingKeepsTwelveDigits(@ForAll @DoubleRange(min = -1e9, max = 1e9) double value) {
    double written = TwelveDigits.round(value);

    assertThat(Math.abs(written - value)).isLessThanOrEqualTo(Math.abs(value) * 5e-12);
    assertThat(TwelveDigits.round(written)).isEqualTo(written);
  }
}

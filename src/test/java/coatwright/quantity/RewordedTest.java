package coatwright.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RewordedTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "The wood, 10.7 °C, is at the dew point.|The wood, 51.3 °F, is at the dew point.",
        "a frost of -4.0 °C|a frost of 24.8 °F",
        "it stands 2.4 K above|it stands 4.3 °F above",
        "under 1 K the film clouds|under 1.8 °F the film clouds",
        "warm the wood by 5 K|warm the wood by 9 °F",
        "from 12 to 30 °C|from 54 to 86 °F",
        "Wet film taken as 75 µm.|Wet film taken as 3.0 mil.",
        "75 µm (3.0 mil)|3.0 mil (75 µm)",
        "3.0 mil (75 µm)|3.0 mil (75 µm)",
        "11.5 g/m³ of water|5.0 gr/ft³ of water",
        "80 % and 1.39 times|80 % and 1.39 times",
        "coat e41 of 3 Kegs|coat e41 of 3 Kegs"
      })
  void aSentenceIsPutIntoAmericanUnits(String metric, String american) {
    assertThat(Reworded.in(UnitSystem.US, metric)).isEqualTo(american);
  }

  @Test
  void anImperialShopKeepsCelsiusAndReadsMil() {
    assertThat(Reworded.in(UnitSystem.IMPERIAL, "75 µm at 20.0 °C, 2.0 K above"))
        .isEqualTo("3.0 mil at 20.0 °C, 2.0 K above");
  }

  @Test
  void aMetricShopReadsTheSentenceAsItIs() {
    assertThat(Reworded.in(UnitSystem.METRIC, "75 µm at 20.0 °C")).isEqualTo("75 µm at 20.0 °C");
  }

  /** The grain is 64.79891 mg and the foot 0.3048 m, both exact (NIST SP 811, appendix B.8). */
  @Test
  void aGrainACubicFootIsTwoPointTwoNineGramsACubicMetre() {
    assertThat(Conversions.G_M3_PER_GRAIN_FT3).isCloseTo(2.288352, within(1e-6));
  }
}

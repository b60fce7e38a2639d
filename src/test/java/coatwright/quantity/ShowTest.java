package coatwright.quantity;

import static coatwright.quantity.UnitSystem.IMPERIAL;
import static coatwright.quantity.UnitSystem.METRIC;
import static coatwright.quantity.UnitSystem.US;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.Locale;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ShowTest {
  @Test
  void showsTemperaturesAndStepsInTheShopsScale() {
    assertThat(Show.temperature(27, METRIC)).isEqualTo("27.0 °C");
    assertThat(Show.temperature(27, US)).isEqualTo("80.6 °F");
    assertThat(Show.temperature(27, IMPERIAL)).isEqualTo("27.0 °C");
    assertThat(Show.temperatureStep(2.4, METRIC)).isEqualTo("2.4 K");
    assertThat(Show.temperatureStep(2.4, US)).isEqualTo("4.3 °F");
  }

  @Test
  void neverShowsANegativeNought() {
    assertThat(Show.temperature(-0.04, METRIC)).isEqualTo("0.0 °C");
  }

  @Test
  void showsCutsInPoundsAndGrams() {
    assertThat(Show.cut(240, US)).isEqualTo("2.0 lb (240 g/L)");
    assertThat(Show.cut(240, METRIC)).isEqualTo("240 g/L (2.0 lb)");
    assertThat(Show.cut(240, IMPERIAL)).isEqualTo("2.4 lb/imp (240 g/L)");
  }

  @Test
  void showsFilmsInMilAndMicrometres() {
    assertThat(Show.film(75, US)).isEqualTo("3.0 mil (75 µm)");
    assertThat(Show.film(75, METRIC)).isEqualTo("75 µm (3.0 mil)");
    assertThat(Show.film(8.2, METRIC)).isEqualTo("8.2 µm (0.32 mil)");
  }

  @Test
  void showsVolumesWeightsAreasAndHeights() {
    assertThat(Show.volume(240, METRIC)).isEqualTo("240 mL");
    assertThat(Show.volume(1500, METRIC)).isEqualTo("1.50 L");
    assertThat(Show.volume(240, US)).isEqualTo("8.1 fl oz");
    assertThat(Show.volume(1000, US)).isEqualTo("1.1 qt");
    assertThat(Show.volume(240, IMPERIAL)).isEqualTo("8.4 fl oz (imp)");
    assertThat(Show.mass(225, METRIC)).isEqualTo("225 g");
    assertThat(Show.mass(225, US)).isEqualTo("7.9 oz");
    assertThat(Show.mass(1200, US)).isEqualTo("2.6 lb");
    assertThat(Show.area(1.5, METRIC)).isEqualTo("1.50 m²");
    assertThat(Show.area(1.5, US)).isEqualTo("16.1 ft²");
    assertThat(Show.altitude(50, US)).isEqualTo("164 ft");
    assertThat(Show.pressure(101325, US)).isEqualTo("29.92 inHg");
    assertThat(Show.pressure(101325, METRIC)).isEqualTo("1013 hPa");
    assertThat(Show.relativeHumidity(64.6)).isEqualTo("65 %");
  }

  @ParameterizedTest
  @CsvSource({
    "PT45S, 45 s",
    "PT7M, 7 min",
    "PT89M, 89 min",
    "PT5H30M, 5.5 h",
    "PT91H12M, 3.8 d",
    "PT552H, 23 d",
    "PT-7M, -7 min",
    "PT0S, 0 s"
  })
  void showsLengthsOfTimeInOneNumberAndOneWord(Duration time, String shown) {
    assertThat(Show.duration(time)).isEqualTo(shown);
  }

  @Test
  void showsThePointWhateverTheMachineSpeaks() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.GERMANY);
      assertThat(Show.temperature(26.95, METRIC)).isEqualTo("27.0 °C");
      assertThat(Show.cut(240, US)).isEqualTo("2.0 lb (240 g/L)");
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void refusesToShowWhatIsNotANumber() {
    assertThatThrownBy(() -> Show.temperature(Double.NaN, METRIC)).isInstanceOf(OutOfRange.class);
  }

  @Property(seed = "20261125")
  void whatIsShownCanBeTypedBack(@ForAll @DoubleRange(min = -40, max = 60) double tempC) {
    for (UnitSystem units : UnitSystem.values()) {
      double readC = Quantities.temperatureC("air", Show.temperature(tempC, units));
      assertThat(readC).isCloseTo(tempC, within(0.051));
    }
  }
}

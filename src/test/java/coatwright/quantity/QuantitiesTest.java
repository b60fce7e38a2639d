package coatwright.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import java.util.function.BiFunction;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Conversion factors of NIST Special Publication 811 (2008), Appendix B, unless another is named.
 */
class QuantitiesTest {
  private static final List<BiFunction<String, String, Object>> EVERY_READER =
      List.of(
          Quantities::temperatureC,
          Quantities::temperatureStepK,
          Quantities::relativeHumidityPct,
          Quantities::percent,
          Quantities::volumeFractionPct,
          Quantities::cutGPerL,
          Quantities::lengthUm,
          Quantities::lengthMm,
          Quantities::massG,
          Quantities::volumeMl,
          Quantities::pressurePa,
          Quantities::altitudeM,
          Quantities::areaM2,
          Quantities::duration,
          Quantities::airSpeedMPerS);

  @ParameterizedTest
  @CsvSource({
    "27C, 27",
    "27 °C, 27",
    "27c, 27",
    "27degC, 27",
    "80F, 26.666667",
    "-40°F, -40",
    "300K, 26.85",
    "32F, 0",
    "2.7e1C, 27"
  })
  void readsTemperatures(String text, double tempC) {
    assertThat(Quantities.temperatureC("air temperature", text)).isCloseTo(tempC, within(1e-6));
  }

  @ParameterizedTest
  @CsvSource({"5K, 5", "9F, 5", "5C, 5", "-2K, -2"})
  void readsTemperatureSteps(String text, double stepK) {
    assertThat(Quantities.temperatureStepK("margin", text)).isCloseTo(stepK, within(1e-12));
  }

  @ParameterizedTest
  @CsvSource({"95%, 95", "190proof, 95", "95 %vol, 95"})
  void readsStrengths(String text, double pct) {
    assertThat(Quantities.volumeFractionPct("strength", text)).isEqualTo(pct);
  }

  /** 1 lb/US gal is 119.8264 g/L, 1 lb/imp gal is 99.77637 g/L. */
  @ParameterizedTest
  @CsvSource({
    "1lb, 119.8264",
    "2 lb, 239.6529",
    "1lb/imp, 99.77637",
    "240g/L, 240",
    "0.24kg/L, 240"
  })
  void readsCuts(String text, double cutGPerL) {
    assertThat(Quantities.cutGPerL("cut", text)).isCloseTo(cutGPerL, within(5e-5));
  }

  @ParameterizedTest
  @CsvSource({"3mil, 76.2", "75um, 75", "75 µm, 75", "75μm, 75", "0.1mm, 100", "0.003in, 76.2"})
  void readsFilms(String text, double filmUm) {
    assertThat(Quantities.lengthUm("wet film", text)).isCloseTo(filmUm, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"19mm, 19", "0.75in, 19.05", "2ft, 609.6", "1.2m, 1200"})
  void readsLengths(String text, double lengthMm) {
    assertThat(Quantities.lengthMm("thickness", text)).isCloseTo(lengthMm, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"8oz, 226.796185", "1lb, 453.59237", "1.2kg, 1200", "225g, 225"})
  void readsWeights(String text, double massG) {
    assertThat(Quantities.massG("flakes", text)).isCloseTo(massG, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({
    "8floz, 236.5882365",
    "8 fl oz, 236.5882365",
    "1floz/imp, 28.4130625",
    "1qt, 946.352946",
    "1qt/imp, 1136.5225",
    "1gal, 3785.411784",
    "1gal/imp, 4546.09",
    "240mL, 240",
    "1.5L, 1500",
    "28m3, 28000000",
    "28m³, 28000000"
  })
  void readsVolumes(String text, double volumeMl) {
    assertThat(Quantities.volumeMl("spirit", text)).isCloseTo(volumeMl, within(1e-6));
  }

  /** A cubic foot by definition: 0.3048³ m³. */
  @ParameterizedTest
  @CsvSource({"28m3, 28", "28 m³, 28", "1000ft3, 28.3168466", "28000L, 28"})
  void readsTheVolumeOfARoomInCubicMetres(String text, double m3) {
    assertThat(Quantities.roomVolumeM3("volume", text)).isCloseTo(m3, within(1e-6));
  }

  @ParameterizedTest
  @CsvSource({"1013hPa, 101300", "1013mbar, 101300", "101.3kPa, 101300", "29.92inHg, 101320.76"})
  void readsPressures(String text, double pressurePa) {
    assertThat(Quantities.pressurePa("pressure", text)).isCloseTo(pressurePa, within(0.01));
  }

  @Test
  void readsAltitudesAreasAndAirSpeeds() {
    assertThat(Quantities.altitudeM("altitude", "160ft")).isCloseTo(48.768, within(1e-9));
    assertThat(Quantities.areaM2("area", "16ft2")).isCloseTo(1.48644864, within(1e-9));
    assertThat(Quantities.areaM2("area", "100 cm²")).isCloseTo(0.01, within(1e-12));
    assertThat(Quantities.airSpeedMPerS("draught", "40ft/min")).isCloseTo(0.2032, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({
    "20min, PT20M",
    "90s, PT1M30S",
    "1h30min, PT1H30M",
    "1 h 30 min, PT1H30M",
    "2d, PT48H",
    "1.5h, PT1H30M",
    "2 weeks, PT336H",
    "0.5s, PT0.5S"
  })
  void readsLengthsOfTime(String text, Duration time) {
    assertThat(Quantities.duration("rest", text)).isEqualTo(time);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "20",
        "20m",
        "min",
        "1h1h",
        "30min1h",
        "-5min",
        "1e300d",
        "101 years",
        "1h30",
        "",
        "2000w9999999d"
      })
  void refusesLengthsOfTimeThatCouldBeReadTwoWays(String text) {
    assertThatThrownBy(() -> Quantities.duration("rest", text)).isInstanceOf(RefusedInput.class);
  }

  @Test
  void everyReaderRefusesANumberWithoutItsUnit() {
    for (BiFunction<String, String, Object> reader : EVERY_READER) {
      assertThatThrownBy(() -> reader.apply("value", "27"))
          .isInstanceOf(RefusedInput.class)
          .hasMessageContaining("value \"27\"")
          .hasMessageContaining("needs its unit")
          .hasMessageContaining("write it like");
    }
  }

  @Test
  void everyReaderRefusesWhatIsNoNumber() {
    for (BiFunction<String, String, Object> reader : EVERY_READER) {
      for (String text :
          List.of("", "C", "warm", "NaN", "NaN%", "0x10mm", "--3C", "1e999g", "27furlong")) {
        assertThatThrownBy(() -> reader.apply("value", text)).isInstanceOf(RefusedInput.class);
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"-300C", "-1K", "1e300C"})
  void refusesImpossibleTemperatures(String text) {
    assertThatThrownBy(() -> Quantities.temperatureC("air temperature", text))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining("absolute zero");
  }

  @Test
  void refusesMoreThanAHundredPerCent() {
    assertThatThrownBy(() -> Quantities.relativeHumidityPct("humidity", "135%"))
        .hasMessage(
            "humidity \"135%\": a relative humidity here is from 0 to 100 %;"
                + " check the number and its unit");
  }

  @Test
  void tellsAWeightOunceFromAFluidOne() {
    assertThatThrownBy(() -> Quantities.volumeMl("spirit", "8oz"))
        .hasMessageContaining("oz alone is a weight");
    assertThatThrownBy(() -> Quantities.massG("flakes", "8floz")).hasMessageContaining("weigh it");
  }

  @Test
  void saysThatTheDecimalMarkIsAPoint() {
    assertThatThrownBy(() -> Quantities.temperatureC("air temperature", "27,5C"))
        .hasMessageContaining("the decimal mark is a point");
  }

  @Test
  void aRefusalNamesInputRuleAndRemedy() {
    RefusedInput refusal =
        catchThrowableOfType(RefusedInput.class, () -> Quantities.cutGPerL("cut", "2"));
    assertThat(refusal.faults()).hasSize(1);
    Fault fault = refusal.faults().get(0);
    assertThat(fault.input()).isEqualTo("cut \"2\"");
    assertThat(fault.rule()).isEqualTo("a cut needs its unit");
    assertThat(fault.remedy()).contains("2lb (per US gallon of spirit)");
  }

  @Property(seed = "20261125")
  void anyTextIsReadOrRefusedButNeverBreaksAReader(@ForAll String text) {
    for (BiFunction<String, String, Object> reader : EVERY_READER) {
      try {
        assertThat(reader.apply("value", text)).isNotNull();
      } catch (RefusedInput refusal) {
        assertThat(refusal.getMessage()).isNotBlank();
      }
    }
  }
}

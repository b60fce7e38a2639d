package coatwright.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.RefusedInput;
import java.util.Map;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.junit.jupiter.api.Test;

class OutlookFormTest {
  private static OutlookRequest read(Map<String, String> form) {
    return OutlookForm.read(form, TestShop.FINISHES);
  }

  @Test
  void readsEveryKeyWithItsUnit() {
    OutlookRequest r =
        read(
            Map.ofEntries(
                Map.entry("finish", "shellac-pale"),
                Map.entry("air", "80F, 65%"),
                Map.entry("wood", "72F"),
                Map.entry("cut", "2lb"),
                Map.entry("wetFilm", "3mil"),
                Map.entry("strength", "190proof"),
                Map.entry("retarder", "2-butoxyethanol:3%"),
                Map.entry("draught", "light"),
                Map.entry("coatsBefore", "3"),
                Map.entry("interval", "20min"),
                Map.entry("altitude", "500m"),
                Map.entry("method", "pad"),
                Map.entry("board", "0.75in")));
    assertThat(r.airTempC()).isCloseTo(26.67, within(0.01));
    assertThat(r.rhPct()).isEqualTo(65);
    assertThat(r.woodTempC().getAsDouble()).isCloseTo(22.22, within(0.01));
    assertThat(r.cutGPerL().getAsDouble()).isCloseTo(239.65, within(0.01));
    assertThat(r.wetFilmUm().getAsDouble()).isCloseTo(76.2, within(0.01));
    assertThat(r.strengthVolPct().getAsDouble()).isEqualTo(95);
    assertThat(r.retarderVolPct()).isEqualTo(3);
    assertThat(r.draughtMPerS()).isEqualTo(0.5);
    assertThat(r.coatsBefore()).isEqualTo(3);
    assertThat(r.intervalMin()).isEqualTo(20);
    assertThat(r.pressurePa()).isCloseTo(95_461, within(10.0));
    assertThat(r.method()).isEqualTo("pad");
    assertThat(r.boardThicknessMm()).isCloseTo(19.05, within(0.01));
  }

  @Test
  void tellsEveryFaultAtOnce() {
    assertThatThrownBy(
            () ->
                read(
                    Map.of(
                        "finish", "no-such",
                        "air", "27,65%",
                        "cut", "2",
                        "strength", "70%",
                        "retarder", "acetone:3%",
                        "draught", "stormy",
                        "colour", "red")))
        .asInstanceOf(InstanceOfAssertFactories.type(RefusedInput.class))
        .extracting(RefusedInput::faults, InstanceOfAssertFactories.LIST)
        .hasSize(7);
  }

  @Test
  void namesTheSolventItKnowsWhenItRefusesAnother() {
    assertThatThrownBy(
            () ->
                read(Map.of("finish", "shellac-pale", "air", "20C,50%", "retarder", "butanol:3%")))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining("2-butoxyethanol");
  }

  @Test
  void refusesAirTheModelDoesNotHoldFor() {
    assertThatThrownBy(() -> read(Map.of("finish", "shellac-pale", "air", "60C,50%")))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining("from -5 to 45 °C");
  }

  @Test
  void takesAnAirSpeedForADraught() {
    assertThat(
            read(Map.of("finish", "shellac-pale", "air", "20C,50%", "draught", "0.3m/s"))
                .draughtMPerS())
        .isEqualTo(0.3);
  }
}

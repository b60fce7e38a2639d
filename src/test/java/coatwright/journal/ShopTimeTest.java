package coatwright.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coatwright.quantity.RefusedInput;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ShopTimeTest {
  private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

  /** 17:05 on the shop's wall, 14 March 2026, winter time. */
  private static final Instant NOW = Instant.parse("2026-03-14T16:05:00Z");

  private final ShopTime time = new ShopTime(Clock.fixed(NOW, BERLIN), BERLIN);

  @ParameterizedTest
  @CsvSource({
    "16:20, 2026-03-14T15:20:00Z",
    "9:05, 2026-03-14T08:05:00Z",
    "16:20:30, 2026-03-14T15:20:30Z",
    "today 07:00, 2026-03-14T06:00:00Z",
    "yesterday 16:20, 2026-03-13T15:20:00Z",
    "Yesterday 16:20, 2026-03-13T15:20:00Z",
    "2026-03-01T16:20, 2026-03-01T15:20:00Z",
    "2026-03-01 16:20, 2026-03-01T15:20:00Z",
    "2025-07-01T16:20, 2025-07-01T14:20:00Z",
    "2026-03-01T16:20:15Z, 2026-03-01T16:20:15Z",
    "2026-03-01T16:20+05:30, 2026-03-01T10:50:00Z",
    "-20min, 2026-03-14T15:45:00Z",
    "-1h30min, 2026-03-14T14:35:00Z",
    "now, 2026-03-14T16:05:00Z"
  })
  void readsTheTimesOfTheShop(String text, Instant meant) {
    assertThat(time.past("start", text)).isEqualTo(meant);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "25:00",
        "16.20",
        "4pm",
        "tomorrow 8:00",
        "2026-13-01T10:00",
        "yesterday",
        "",
        "-20",
        "-20m",
        "16:60"
      })
  void refusesWhatIsNoTime(String text) {
    assertThatThrownBy(() -> time.past("start", text)).isInstanceOf(RefusedInput.class);
  }

  @Test
  void refusesTheHourThatSummerTimeSkips() {
    ShopTime april =
        new ShopTime(Clock.fixed(Instant.parse("2026-04-02T10:00:00Z"), BERLIN), BERLIN);
    assertThatThrownBy(() -> april.past("start", "2026-03-29T02:30"))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining("the clock went from 02:00 straight to 03:00")
        .hasMessageContaining("no 02:30");
  }

  @Test
  void refusesTheHourThatComesTwiceUnlessToldWhich() {
    ShopTime november =
        new ShopTime(Clock.fixed(Instant.parse("2026-11-02T10:00:00Z"), BERLIN), BERLIN);
    assertThatThrownBy(() -> november.past("start", "2026-10-25T02:30"))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining("02:30 came twice")
        .hasMessageContaining("2026-10-25T02:30+02:00 for the first")
        .hasMessageContaining("2026-10-25T02:30+01:00 for the second");
    assertThat(november.past("start", "2026-10-25T02:30+01:00"))
        .isEqualTo(Instant.parse("2026-10-25T01:30:00Z"));
  }

  @Test
  void refusesWhatHasNotComeYet() {
    assertThatThrownBy(() -> time.past("start", "23:50"))
        .hasMessageContaining("2026-03-14T23:50, which has not come yet")
        .hasMessageContaining("yesterday 23:50");
  }

  @Test
  void readsDays() {
    assertThat(time.day("opened", "2026-03-01")).isEqualTo(LocalDate.of(2026, 3, 1));
    assertThat(time.day("opened", "today")).isEqualTo(LocalDate.of(2026, 3, 14));
    assertThat(time.day("opened", "yesterday")).isEqualTo(LocalDate.of(2026, 3, 13));
    assertThatThrownBy(() -> time.day("opened", "1.3.2026")).isInstanceOf(RefusedInput.class);
  }
}

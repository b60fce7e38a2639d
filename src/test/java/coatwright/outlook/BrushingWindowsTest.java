package coatwright.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.outlook.BrushingWindows.Hour;
import coatwright.outlook.BrushingWindows.Window;
import coatwright.quantity.RefusedInput;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class BrushingWindowsTest {
  private static final int DAYS = 30;
  private static final WindowQuestion USUAL = WindowQuestion.in(TestShop.ROOM);

  /** Damp nights, dry afternoons: 72 % at three in the morning, 38 % at three in the afternoon. */
  private static TestShop swinging() {
    TestShop shop = new TestShop();
    shop.air(0, DAYS * 24, 10, h -> 20 + 2 * swing(h), h -> 55 - 17 * swing(h) + Math.sin(h / 7.3));
    return shop.at(Duration.ofDays(DAYS));
  }

  /** 1 at three in the afternoon of UTC, -1 at three in the morning. */
  private static double swing(double hoursSinceStart) {
    double hour = hoursSinceStart + TestShop.START.getEpochSecond() % 86_400 / 3600.0;
    return Math.cos(2 * Math.PI * (hour - 15) / 24);
  }

  @Test
  void offersTheDryAfternoonsAndNotTheDampNights() {
    TestShop shop = swinging();

    BrushingWindows ahead = shop.outlooks.windows(USUAL, shop.now());

    assertThat(ahead.promised()).isTrue();
    assertThat(ahead.hours()).hasSizeBetween(70, 72);
    for (Hour hour : ahead.hours()) {
      int ofDay = (int) (hour.from().getEpochSecond() / 3600 % 24);
      if (ofDay >= 13 && ofDay <= 16) {
        assertThat(hour.share()).as("at " + hour.from()).isGreaterThan(0.8);
      }
      if (ofDay >= 1 && ofDay <= 4) {
        assertThat(hour.share()).as("at " + hour.from()).isLessThan(0.2);
      }
      assertThat(hour.usual())
          .isEqualTo(!hour.from().isBefore(shop.now().plus(Duration.ofHours(24))));
    }
    // Three afternoons and what is left of this one, one of them cut where the forecast ends.
    assertThat(ahead.windows()).hasSizeBetween(3, 5);
    assertThat(ahead.windows()).anyMatch(Window::usual).anyMatch(window -> !window.usual());
    assertThat(ahead.sentence()).contains("of 100 courses the air may take");
    assertThat(ahead.basis()).isEqualTo("learning");
  }

  @Test
  void saysThatNoWindowCanBePromisedWhereItIsAlwaysDamp() {
    TestShop shop = new TestShop();
    shop.air(0, DAYS * 24, 10, h -> 18, h -> 78 + Math.sin(h / 5));
    shop.at(Duration.ofDays(DAYS));

    BrushingWindows ahead = shop.outlooks.windows(USUAL, shop.now());

    assertThat(ahead.promised()).isFalse();
    assertThat(ahead.windows()).isEmpty();
    assertThat(ahead.sentence()).startsWith("No window can be promised for the next 24 hours");
  }

  @Test
  void withoutAReadingToBelieveNothingIsPromised() {
    TestShop shop = swinging().at(Duration.ofDays(DAYS).plusHours(3));

    BrushingWindows ahead = shop.outlooks.windows(USUAL, shop.now());

    assertThat(ahead.promised()).isFalse();
    assertThat(ahead.hours()).isEmpty();
    assertThat(ahead.basis()).isEqualTo("none");
    assertThat(ahead.sentence()).startsWith("No air to believe").contains("No window");
  }

  @Test
  void aFinishThatCuresHasWindowsOfItsOwn() {
    TestShop shop = TestShop.using("waterborne-acrylic");
    shop.air(0, DAYS * 24, 10, h -> 19 + swing(h), h -> 50 - 5 * swing(h));
    shop.at(Duration.ofDays(DAYS));

    BrushingWindows ahead = shop.outlooks.windows(USUAL, shop.now());

    assertThat(ahead.finish()).isEqualTo("waterborne-acrylic");
    assertThat(ahead.promised()).isTrue();
  }

  @Test
  void refusesAFinishThatIsNotThere() {
    TestShop shop = swinging();
    WindowQuestion asked =
        new WindowQuestion(
            Optional.empty(), Optional.of("ivory"), Optional.empty(), Optional.of(TestShop.ROOM));

    assertThatThrownBy(() -> shop.outlooks.windows(asked, shop.now()))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining("ivory");
  }

  @Test
  void hoursThatFollowOnEachOtherAreOneWindowOfTheWorstShare() {
    Instant from = Instant.parse("2026-03-14T08:00:00Z");
    double[] shares = {0.5, 0.85, 0.95, 0.81, 0.7, 0.9};
    List<Hour> hours = new ArrayList<>();
    for (int i = 0; i < shares.length; i++) {
      hours.add(new Hour(from.plus(Duration.ofHours(i)), shares[i], false));
    }
    hours.add(new Hour(from.plus(Duration.ofHours(6)), 0.99, true));

    List<Window> windows = WindowFinder.windows(hours);

    assertThat(windows).hasSize(3);
    assertThat(windows.get(0).from()).isEqualTo(from.plus(Duration.ofHours(1)));
    assertThat(windows.get(0).until()).isEqualTo(from.plus(Duration.ofHours(4)));
    assertThat(windows.get(0).share()).isCloseTo(0.81, within(1e-12));
    assertThat(windows.get(1).until()).isEqualTo(from.plus(Duration.ofHours(6)));
    assertThat(windows.get(2).usual()).isTrue();
  }

  @Test
  void whenHeldOffTheNextBetterHourIsToldWithItsShare() {
    TestShop shop = swinging();
    Duration tillNight = Duration.ofHours(27 - shop.now().getEpochSecond() / 3600 % 24);
    double end = DAYS * 24 + tillNight.toHours();
    shop.air(DAYS * 24, end, 10, h -> 20 + 2 * swing(h), h -> 90);
    shop.wood(end - 0.05, 17.5);
    shop.at(Duration.ofMinutes(Math.round(60 * end)));

    SessionOutlook session = shop.outlooks.session(TestShop.ROOM, shop.now());

    assertThat(session.outlook().summary()).isEqualTo(Outlook.Summary.HOLD_OFF);
    assertThat(session.nextBetter()).isPresent();
    assertThat(session.nextBetterShare().orElseThrow()).isBetween(0.0, 1.0);
    assertThat(session.outlook().actions())
        .anyMatch(action -> action.startsWith("Wait until about") && action.contains("of 100"));
  }
}

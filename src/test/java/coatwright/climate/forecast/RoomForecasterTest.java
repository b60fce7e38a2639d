package coatwright.climate.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.air.SaturationPressure;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class RoomForecasterTest {
  private static final ZoneId ZONE = ZoneId.of("Europe/Berlin");
  private static final int WARM_H = 35 * 24;

  private static List<HourAir> shop;
  private static BackTest score;

  /** A simulated heated shop over sixty days of invented weather, and what is said of it. */
  @BeforeAll
  static void runTheShop() {
    HourlyOutdoors outdoors =
        HourlyOutdoors.invented(Instant.parse("2025-08-01T00:00:00Z"), 24 * 73, 20_261_125L);
    shop = SimulatedRoom.hours(SimulatedRoom.Kind.HEATED_SHOP, outdoors, ZONE, 3);
    score = new BackTest(shop, ZONE).score(WARM_H, 60 * 24);
  }

  @Test
  void isNearerThanItStaysAndThanTheDailyMeansSixHoursAhead() {
    for (int quantity = 0; quantity < 3; quantity++) {
      assertThat(score.ratioToStaying(quantity, 2)).isLessThan(0.75);
      assertThat(score.ratioToBetterMean(quantity, 2)).isLessThan(0.75);
    }
  }

  @Test
  void isNeverMuchWorseThanItStays() {
    for (int quantity = 0; quantity < 3; quantity++) {
      for (int lead = 0; lead < BackTest.LEADS.length; lead++) {
        assertThat(score.ratioToStaying(quantity, lead)).isLessThan(1.12);
      }
    }
  }

  /** Twenty-five days are few, and one hour's error is like the next's: all leads together. */
  @Test
  void itsRangesHoldAboutEightInTen() {
    for (int quantity = 0; quantity < 3; quantity++) {
      double sum = 0;
      for (int lead = 0; lead < BackTest.LEADS.length; lead++) {
        sum += score.coveragePct(quantity, lead) / BackTest.LEADS.length;
      }
      assertThat(sum).isBetween(70.0, 90.0);
    }
  }

  @Test
  void itsSharesTellMoreThanHowOftenTheHourIsFine() {
    assertThat(score.skill(0)).isGreaterThan(0.7);
    assertThat(score.skill(2)).isGreaterThan(0.3);
  }

  @Test
  void knowsNothingOfTheFuture() {
    int now = 50 * 24;
    RoomForecaster one = new RoomForecaster(ZONE);
    RoomForecaster other = new RoomForecaster(ZONE);
    shop.subList(0, now).forEach(one::add);
    shop.subList(0, now).forEach(other::add);
    HourlyForecast before = one.forecast().orElseThrow();
    double[] said = values(before);
    for (int i = 0; i < 80; i++) {
      other.add(HourAir.mean(shop.get(now).hour() + i, 40, 4000));
    }

    assertThat(values(before)).isEqualTo(said);
    RoomForecaster again = new RoomForecaster(ZONE);
    shop.subList(0, now).forEach(again::add);
    assertThat(values(again.forecast().orElseThrow())).isEqualTo(said);
    assertThat(values(other.forecast().orElseThrow())).isNotEqualTo(said);
  }

  private static double[] values(HourlyForecast forecast) {
    List<Double> all = new ArrayList<>();
    for (int lead = 1; lead <= HourlyForecast.LEADS; lead++) {
      all.add(forecast.tempC(lead));
      all.add(forecast.vapourPa(lead));
      for (int member = 0; member < forecast.members(); member++) {
        all.add(forecast.tempC(member, lead));
        all.add(forecast.vapourPa(member, lead));
      }
    }
    return all.stream().mapToDouble(Double::doubleValue).toArray();
  }

  @Test
  void onTheFirstDayTheAirStaysAndIsSaidToStay() {
    RoomForecaster young = new RoomForecaster(ZONE);
    shop.subList(0, 12).forEach(young::add);

    HourlyForecast forecast = young.forecast().orElseThrow();

    assertThat(forecast.basis()).isEqualTo(HourlyForecast.Basis.STAYS);
    assertThat(forecast.tempC(1)).isEqualTo(shop.get(11).tempC());
    assertThat(forecast.tempC(72)).isEqualTo(shop.get(11).tempC());
    assertThat(width(forecast, 24)).isGreaterThan(2 * width(forecast, 1));
  }

  private static double width(HourlyForecast forecast, int lead) {
    double[] values = new double[forecast.members()];
    for (int m = 0; m < values.length; m++) {
      values[m] = forecast.tempC(m, lead);
    }
    return HourlyForecast.quantile(values, 0.9) - HourlyForecast.quantile(values, 0.1);
  }

  @Test
  void beforeAnyHourNothingIsSaid() {
    assertThat(new RoomForecaster(ZONE).forecast()).isEmpty();
  }

  @Test
  void refusesAnHourThatIsAlreadyTaken() {
    RoomForecaster forecaster = new RoomForecaster(ZONE);
    forecaster.add(HourAir.mean(100, 20, 1000));
    assertThatThrownBy(() -> forecaster.add(HourAir.mean(100, 21, 1000)))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** Eighteen hours in a hundred lost in outages of three to thirty hours cost little. */
  @Test
  void gapsCostLittleAndAreNeverLearnedFrom() {
    BackTest whole = new BackTest(shop, ZONE).middlesOnly().score(WARM_H, 60 * 24);
    double whole6h = whole.mean(0, 2, 0);
    RoomForecaster gappy = new RoomForecaster(ZONE);
    double sum = 0;
    int n = 0;
    for (int i = 0; i < 60 * 24; i++) {
      boolean lost = i % 100 < 18;
      if (!lost) {
        gappy.add(shop.get(i));
      }
      if (i >= WARM_H && i % 100 > 24) {
        sum += Math.abs(gappy.forecast().orElseThrow().tempC(6) - shop.get(i + 6).tempC());
        n++;
      }
    }

    assertThat(sum / n).isLessThan(1.35 * whole6h);
    assertThat(gappy.known(shop.get(1305).hour())).isFalse();
    assertThat(gappy.known(shop.get(1325).hour())).isTrue();
  }

  @Test
  void inAGapTheUsualDayIsToldWhileTheDepartureFades() {
    RoomForecaster silent = new RoomForecaster(ZONE);
    shop.subList(0, WARM_H).forEach(silent::add);
    long last = shop.get(WARM_H - 1).hour();
    silent.fillTo(last + 12);

    HourlyForecast forecast = silent.forecast().orElseThrow();

    assertThat(forecast.hour()).isEqualTo(last + 12);
    assertThat(silent.known(last + 12)).isFalse();
    assertThat(forecast.tempC(6)).isCloseTo(shop.get(WARM_H + 17).tempC(), within(5.0));
  }

  @Test
  void afterALongSilenceNothingIsFilledIn() {
    RoomForecaster silent = new RoomForecaster(ZONE);
    shop.subList(0, 100).forEach(silent::add);
    long last = silent.lastHour().orElseThrow();
    silent.fillTo(last + 70 * 24);
    assertThat(silent.lastHour()).contains(last);
  }

  /** A step of 6 K that lasts: told of it, the forecaster is sooner right about the days ahead. */
  @Test
  void aNoteThatTheHeatingChangedRestartsTheUsualDay() {
    double unaware = errorAfterStep(false);
    double aware = errorAfterStep(true);

    assertThat(aware).isLessThan(0.6 * unaware);
  }

  private static double errorAfterStep(boolean told) {
    RoomForecaster forecaster = new RoomForecaster(ZoneOffset.UTC);
    long first = 480_000;
    int step = 40 * 24;
    double sum = 0;
    int n = 0;
    for (int i = 0; i < step + 60; i++) {
      if (i == step && told) {
        forecaster.heatingChanged();
      }
      forecaster.add(HourAir.mean(first + i, stepped(i, step), 900));
      if (i >= step + 30) {
        HourlyForecast forecast = forecaster.forecast().orElseThrow();
        sum += Math.abs(forecast.tempC(48) - stepped(i + 48, step));
        n++;
      }
    }
    return sum / n;
  }

  private static double stepped(int i, int step) {
    double day = 1.5 * Math.sin(2 * Math.PI * i / 24.0) + 0.3 * Math.sin(i * 1.7);
    return 14 + day + (i >= step ? 6 : 0);
  }

  @Test
  void airHoldsNoMoreThanAllInAnyCourse() {
    RoomForecaster damp = new RoomForecaster(ZONE);
    for (int i = 0; i < 30 * 24; i++) {
      double c = 12 + 4 * Math.sin(i / 4.0);
      damp.add(HourAir.mean(480_000 + i, c, 0.97 * SaturationPressure.overWaterPa(c)));
    }
    HourlyForecast forecast = damp.forecast().orElseThrow();
    for (int lead = 1; lead <= HourlyForecast.LEADS; lead++) {
      for (int m = 0; m < forecast.members(); m++) {
        assertThat(forecast.vapourPa(m, lead))
            .isLessThanOrEqualTo(SaturationPressure.overWaterPa(forecast.tempC(m, lead)));
      }
    }
  }

  /** A perfect outdoor forecast is worth a good deal two days ahead; a stale one is not used. */
  @Test
  void anOutdoorForecastHelpsAndAStaleOneIsLeftOut() {
    HourlyOutdoors outdoors =
        HourlyOutdoors.invented(Instant.parse("2025-08-01T00:00:00Z"), 24 * 73, 20_261_125L);
    List<HourAir> bare = SimulatedRoom.hours(SimulatedRoom.Kind.BARE, outdoors, ZONE, 3);
    BackTest alone = new BackTest(bare, ZONE).middlesOnly().score(WARM_H, 58 * 24);
    BackTest helped = new BackTest(bare, ZONE).middlesOnly();
    helped.outside(hour -> perfect(outdoors, hour));
    helped.score(WARM_H, 58 * 24);

    assertThat(helped.forecaster().outsideUsed()).isTrue();
    assertThat(helped.mean(0, 5, 0)).isLessThan(0.75 * alone.mean(0, 5, 0));
    assertThat(helped.mean(1, 5, 0)).isLessThan(0.75 * alone.mean(1, 5, 0));
    helped.forecaster().fillTo(helped.forecaster().lastHour().orElseThrow() + 30);
    assertThat(helped.forecaster().outsideUsed()).isFalse();
  }

  private static OutsideCourse perfect(HourlyOutdoors outdoors, long hour) {
    double[] temp = new double[80];
    double[] vapour = new double[80];
    for (int i = 0; i < temp.length; i++) {
      temp[i] = outdoors.tempAt(hour + i + 0.5);
      vapour[i] = outdoors.vapourAt(hour + i + 0.5);
    }
    return new OutsideCourse(hour, hour, temp, vapour);
  }
}

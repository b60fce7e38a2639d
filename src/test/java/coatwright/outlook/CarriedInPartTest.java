package coatwright.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coatwright.journal.Ledger;
import coatwright.journal.Observation;
import coatwright.wood.Board;
import coatwright.wood.BoardWarming;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** A part that was stored somewhere cold, carried in, and asked about before it is coated. */
class CarriedInPartTest {
  private final TestShop shop = new TestShop().of("black cherry", 19).jar();

  private void carriedIn(double storedTempC, Duration sinceStart) {
    Instant at = TestShop.START.plus(sinceStart);
    shop.journal.write(
        List.of(
            new Ledger.Line(
                at,
                at,
                Optional.empty(),
                new Observation(
                    TestShop.DOOR,
                    Optional.empty(),
                    Observation.What.CARRIED_IN,
                    OptionalInt.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.of(storedTempC)))));
  }

  private WoodTemperature wood() {
    PartWood wood = PartWood.of(shop.journal.part(TestShop.DOOR), 18);
    return WoodTemperature.at(
            shop.climate,
            TestShop.ROOM,
            Optional.of(TestShop.DOOR.toString()),
            Optional.empty(),
            WoodTemperature.CarriedIn.noted(shop.journal, TestShop.DOOR, shop.now()),
            shop.now(),
            wood)
        .orElseThrow();
  }

  @Test
  void itsFaceWarmsAsTheExactSeriesForAWallSays() {
    shop.steadyAir(0, 6, 20, 60).at(Duration.ofHours(5));
    carriedIn(5, Duration.ofHours(4));
    Board board = PartWood.of(shop.journal.part(TestShop.DOOR), 18).board();

    WoodTemperature wood = wood();
    // Carslaw and Jaeger, chapter III: one sudden change of air, one hour after it.
    double exact = 5 + 15 * BoardWarming.faceShare(board, 3600);
    assertThat(wood.woodTempC()).isCloseTo(exact, within(0.1));
    assertThat(wood.from()).contains("where it was stored, 5.0 °C", "19 mm black cherry");
    assertThat(wood.errorK()).isBetween(0.7, 1.7);
  }

  @Test
  void coldWoodIsHeldOffThoughTheRoomIsWarm() {
    shop.steadyAir(0, 6, 20, 60).at(Duration.ofHours(5));
    Outlook usual = shop.outlooks.ofPart(NextCoat.on(TestShop.DOOR, TestShop.ROOM), shop.now());
    assertThat(usual.assumptions())
        .anySatisfy(said -> assertThat(said).startsWith("Where was it stored?"));
    carriedIn(2, Duration.ofHours(5));

    Outlook cold = shop.outlooks.ofPart(NextCoat.on(TestShop.DOOR, TestShop.ROOM), shop.now());
    assertThat(cold.summary()).isEqualTo(Outlook.Summary.HOLD_OFF);
    assertThat(cold.assumptions()).noneSatisfy(said -> assertThat(said).startsWith("Where was"));
  }

  @Test
  void aDayLaterItHasForgottenWhereItWas() {
    shop.steadyAir(0, 31, 20, 60).at(Duration.ofHours(30));
    carriedIn(2, Duration.ofHours(5));
    assertThat(WoodTemperature.CarriedIn.noted(shop.journal, TestShop.DOOR, shop.now())).isEmpty();
    assertThat(wood().woodTempC()).isCloseTo(20, within(0.1));
  }
}

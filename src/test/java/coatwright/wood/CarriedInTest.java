package coatwright.wood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.air.MoistAir;
import coatwright.quantity.OutOfRange;
import coatwright.wood.Board.Faces;
import java.time.Duration;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class CarriedInTest {
  private static final MoistAir SHOP = MoistAir.of(20, 60);

  private static CarriedIn board(double boardTempC, Faces faces) {
    return new CarriedIn(Board.ofWood(18, faces, 0.5, 9), boardTempC, SHOP);
  }

  /** Dew point of 20 °C, 60 %: 12.0 °C (ASHRAE 2017 by the house's own air, checked there). */
  @Test
  void aColdBoardStandsBelowTheRoomsDewPointUntilItsFaceHasWarmed() {
    CarriedIn cold = board(8, Faces.ONE);
    assertThat(cold.marginK()).isCloseTo(-4.0, within(0.05));
    Duration dry = cold.untilAboveDewPointBy(0).orElseThrow();
    Duration fit = cold.untilAboveDewPointBy(3).orElseThrow();
    assertThat(cold.faceTempC(dry)).isCloseTo(SHOP.dewPointC(), within(1e-3));
    assertThat(cold.faceTempC(fit)).isCloseTo(SHOP.dewPointC() + 3, within(1e-3));
    assertThat(dry).isLessThan(fit);
  }

  /**
   * By hand, one term of the slab (Incropera, equations 5.43 and 5.44): 18 mm of G 0.5 at 9 %, both
   * faces, Bi = 7.692 × 0.009 / 0.134 = 0.517, ζ 0.658, C 1.072; 4/12 of the way at 26.3 min is
   * within Fo 0.2 and the printed tables' reach.
   */
  @Test
  void theTimeToTheDewPointIsThatOfTheOneTermSolution() {
    CarriedIn cold = board(8, Faces.BOTH);
    double zeta = BoardLag.firstRoot(cold.board().biot());
    double first = 4 * Math.sin(zeta) / (2 * zeta + Math.sin(2 * zeta));
    double share = (SHOP.dewPointC() + 3 - 8) / 12;
    double seconds =
        BoardLag.timeConstantS(cold.board()) * Math.log(first * Math.cos(zeta) / (1 - share));
    assertThat(cold.untilAboveDewPointBy(3).orElseThrow().toSeconds() / seconds)
        .isCloseTo(1, within(0.005));
  }

  @Test
  void aMarginTheRoomItselfDoesNotHaveIsNeverReached() {
    CarriedIn foggy = new CarriedIn(Board.ofWood(18, Faces.BOTH, 0.5, 9), 8, MoistAir.of(20, 90));
    assertThat(foggy.untilAboveDewPointBy(3)).isEmpty();
    assertThat(foggy.untilAboveDewPointBy(1)).isPresent();
  }

  @Test
  void aWarmBoardIsReadyAtOnceAndAWarmedOneCoolsToTheRoom() {
    assertThat(board(20, Faces.ONE).untilAboveDewPointBy(3)).contains(Duration.ZERO);
    CarriedIn warm = board(35, Faces.ONE);
    assertThat(warm.untilAboveDewPointBy(3)).contains(Duration.ZERO);
    assertThat(warm.untilRisenBy(1)).isEmpty();
    assertThat(warm.untilWithin(1)).isPositive();
    assertThat(warm.faceTempC(warm.untilWithin(1))).isCloseTo(21, within(1e-3));
  }

  @Test
  void aRiseIsTimedFromTheBoardsOwnTemperature() {
    CarriedIn cold = board(8, Faces.BOTH);
    assertThat(cold.untilRisenBy(0)).contains(Duration.ZERO);
    Duration five = cold.untilRisenBy(5).orElseThrow();
    assertThat(cold.faceTempC(five)).isCloseTo(13, within(1e-3));
    assertThat(cold.untilRisenBy(12)).isEmpty();
  }

  @Property(tries = 200, seed = "20261125")
  void aColderOrThickerBoardTakesLonger(
      @ForAll @DoubleRange(min = -5, max = 10) double boardTempC,
      @ForAll @DoubleRange(min = 4, max = 80) double thicknessMm) {
    Board board = Board.ofWood(thicknessMm, Faces.ONE, 0.6, 9);
    Duration time = new CarriedIn(board, boardTempC, SHOP).untilAboveDewPointBy(3).orElseThrow();
    Duration colder =
        new CarriedIn(board, boardTempC - 1, SHOP).untilAboveDewPointBy(3).orElseThrow();
    Duration thicker =
        new CarriedIn(Board.ofWood(thicknessMm + 5, Faces.ONE, 0.6, 9), boardTempC, SHOP)
            .untilAboveDewPointBy(3)
            .orElseThrow();
    assertThat(colder).isGreaterThanOrEqualTo(time);
    assertThat(thicker).isGreaterThanOrEqualTo(time);
  }

  @Test
  void refusesATemperatureOrMarginThatIsNone() {
    assertThatThrownBy(() -> board(90, Faces.ONE))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("temperature of the board is 90.0 °C");
    CarriedIn cold = board(8, Faces.ONE);
    assertThatThrownBy(() -> cold.untilAboveDewPointBy(-1)).isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> cold.untilWithin(0)).isInstanceOf(OutOfRange.class);
  }
}

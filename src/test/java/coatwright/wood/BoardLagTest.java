package coatwright.wood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.OutOfRange;
import coatwright.wood.Board.Faces;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class BoardLagTest {
  private static final double CHERRY_GRAVITY = 0.5;
  private static final double SHOP_MOISTURE_PCT = 8;

  private static Board cherry(double thicknessMm, Faces faces) {
    return Board.ofWood(thicknessMm, faces, CHERRY_GRAVITY, SHOP_MOISTURE_PCT);
  }

  private static double[] every(double stepS, int count) {
    double[] timesS = new double[count];
    for (int i = 0; i < count; i++) {
      timesS[i] = i * stepS;
    }
    return timesS;
  }

  /** Incropera et al., 7th ed., Table 5.1, plane wall: ζ₁ at three Biot numbers. */
  @Test
  void slowestModeFollowsThePrintedTableOfThePlaneWall() {
    WoodChecks.PLANE_WALL_ROOT.holds();
  }

  /**
   * Incropera et al., 7th ed., equations 5.43 and 5.44: first term of the series at the face, C₁ =
   * 4 sin ζ / (2 ζ + sin 2 ζ), good from a Fourier number of 0.2 on.
   */
  @Test
  void faceFollowsTheOneTermSlabSolutionWithinAHundredthOfAKelvin() {
    WoodChecks.LAG_ONE_TERM.holds();
  }

  /** Lumped capacity, Incropera et al. equation 5.6: a thin veneer cools as exp(-h t / (ρ c L)). */
  @Test
  void thinBoardCoolsAsALumpWithinTwoHundredthsOfAKelvin() {
    WoodChecks.LAG_LUMPED.holds();
    Board veneer = WoodChecks.VENEER;
    double tauS = veneer.heatPerVolumeJPerM3K() * 0.0005 / veneer.surfaceWPerM2K();
    assertThat(veneer.biot()).isLessThan(0.01);
    assertThat(BoardLag.timeConstantS(veneer)).isCloseTo(tauS, within(tauS * 0.003));
  }

  /**
   * Half-space with surface resistance, Carslaw and Jaeger, 2nd ed., section 2.7: the face at time
   * t has gone 1 - exp(x²) erfc(x) of the way, x = h √(α t) / k. A thick slab is one until heat
   * reaches its back.
   */
  @Test
  void thickSlabBeginsAsAHalfSpaceWithinTwoHundredthsOfAKelvin() {
    WoodChecks.LAG_HALF_SPACE.holds();
  }

  /**
   * A steady ramp: the face lags by rate × heat stored under a square metre ÷ surface coefficient.
   */
  @Test
  void steadyRampIsLaggedByTheHeatStoredUnderTheFaceWithinAThousandthOfAKelvin() {
    Board board = cherry(25, Faces.BOTH);
    int count = 200;
    double[] timesS = every(600, count);
    double rateKPerS = 0.2 / 600;
    double[] airC = new double[count];
    for (int i = 0; i < count; i++) {
      airC[i] = 10 + rateKPerS * timesS[i];
    }
    double[] faceC = BoardLag.surfaceTempsC(board, timesS, airC, 10);
    double lagK =
        rateKPerS * board.heatPerVolumeJPerM3K() * board.depthM() / board.surfaceWPerM2K();
    assertThat(airC[count - 1] - faceC[count - 1]).isCloseTo(lagK, within(1e-3));
    assertThat(lagK).isBetween(0.3, 0.8);
  }

  @Test
  void answerDoesNotDependOnHowTheHistoryIsCutUp() {
    Board board = cherry(25, Faces.ONE);
    double[] coarse =
        BoardLag.surfaceTempsC(board, new double[] {0, 7200}, new double[] {12, 22}, 12);
    double[] airC = new double[121];
    for (int i = 0; i < airC.length; i++) {
      airC[i] = 12 + 10.0 * i / 120;
    }
    double[] fine = BoardLag.surfaceTempsC(board, every(60, 121), airC, 12);
    assertThat(fine[120]).isCloseTo(coarse[1], within(1e-3));
  }

  @Property(tries = 100, seed = "20261125")
  void faceStaysBetweenTheColdestAndTheWarmestItHasMet(
      @ForAll @DoubleRange(min = 3, max = 100) double thicknessMm,
      @ForAll @DoubleRange(min = -10, max = 40) double firstC,
      @ForAll @DoubleRange(min = -10, max = 40) double secondC,
      @ForAll @DoubleRange(min = -10, max = 40) double boardC) {
    Board board = cherry(thicknessMm, Faces.BOTH);
    double[] airC = {firstC, firstC, secondC, secondC};
    double[] timesS = {0, 1800, 1801, 9000};
    double low = Math.min(boardC, Math.min(firstC, secondC)) - 1e-6;
    double high = Math.max(boardC, Math.max(firstC, secondC)) + 1e-6;
    for (double faceC : BoardLag.surfaceTempsC(board, timesS, airC, boardC)) {
      assertThat(faceC).isBetween(low, high);
    }
  }

  @Test
  void thickerBoardsAreSlower() {
    double thinS = BoardLag.timeConstantS(cherry(12, Faces.BOTH));
    double thickS = BoardLag.timeConstantS(cherry(45, Faces.BOTH));
    assertThat(thickS).isGreaterThan(3 * thinS);
    assertThat(BoardLag.timeConstantS(cherry(12, Faces.ONE))).isGreaterThan(1.9 * thinS);
  }

  @Test
  void refusesAHistoryThatIsNotOne() {
    Board board = cherry(25, Faces.BOTH);
    double[] one = {0};
    assertRefused(board, new double[] {}, new double[] {}, 20, "0 times");
    assertRefused(board, new double[] {0, 60}, new double[] {20}, 20, "one temperature for each");
    assertRefused(board, new double[] {60, 60}, new double[] {20, 20}, 20, "rise");
    assertRefused(board, new double[] {Double.NaN}, one, 20, "finite");
    assertRefused(board, one, new double[] {Double.NaN}, 20, "air temperature is not a number");
    assertRefused(board, one, new double[] {85}, 20, "air temperature is 85.0 °C");
    assertRefused(board, one, new double[] {20}, 99, "initial board temperature");
    assertThatThrownBy(() -> cherry(0, Faces.BOTH)).isInstanceOf(OutOfRange.class);
  }

  private static void assertRefused(
      Board board, double[] timesS, double[] airTempsC, double initialC, String because) {
    assertThatThrownBy(() -> BoardLag.surfaceTempsC(board, timesS, airTempsC, initialC))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining(because);
  }
}

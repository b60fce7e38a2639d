package coatwright.wood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.Deviation;
import coatwright.quantity.OutOfRange;
import coatwright.wood.Board.Faces;
import java.util.Arrays;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

  private static double[] steady(double tempC, int count) {
    double[] tempsC = new double[count];
    Arrays.fill(tempsC, tempC);
    return tempsC;
  }

  /** Incropera et al., 7th ed., Table 5.1, plane wall: ζ₁ at three Biot numbers. */
  @ParameterizedTest(name = "Bi {0}: ζ₁ {1}")
  @CsvSource({"0.1, 0.3111", "1, 0.8603", "10, 1.4289"})
  void slowestModeFollowsThePrintedTableOfThePlaneWall(double biot, double printedZeta) {
    assertThat(BoardLag.firstRoot(biot)).isCloseTo(printedZeta, within(6e-5));
  }

  /**
   * Incropera et al., 7th ed., equations 5.43 and 5.44: first term of the series at the face, C₁ =
   * 4 sin ζ / (2 ζ + sin 2 ζ), good from a Fourier number of 0.2 on.
   */
  @ParameterizedTest(name = "{0} mm, {1}")
  @CsvSource({"20, BOTH", "20, ONE", "60, BOTH", "100, ONE"})
  void faceFollowsTheOneTermSlabSolutionWithinAHundredthOfAKelvin(double thicknessMm, Faces faces) {
    Board board = cherry(thicknessMm, faces);
    double zeta = BoardLag.firstRoot(board.biot());
    double first = 4 * Math.sin(zeta) / (2 * zeta + Math.sin(2 * zeta));
    double tauS = BoardLag.timeConstantS(board);
    double[] timesS = every(tauS / 4, 17);
    double[] faceC = BoardLag.surfaceTempsC(board, timesS, steady(25, 17), 5);
    double depthM = board.depthM();
    double fourierPerS =
        board.conductivityWPerMK() / board.heatPerVolumeJPerM3K() / (depthM * depthM);
    Deviation deviation = new Deviation("K");
    for (int i = 1; i < timesS.length; i++) {
      if (timesS[i] * fourierPerS > 0.4) {
        double left = first * Math.exp(-timesS[i] / tauS) * Math.cos(zeta);
        deviation.add(faceC[i], 25 - 20 * left, timesS[i] + " s");
      }
    }
    assertThat(deviation.count()).isGreaterThan(5);
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(0.01);
  }

  /** Lumped capacity, Incropera et al. equation 5.6: a thin veneer cools as exp(-h t / (ρ c L)). */
  @Test
  void thinBoardCoolsAsALumpWithinTwoHundredthsOfAKelvin() {
    Board veneer = new Board(1, Faces.BOTH, 0.5, 8e5, 5);
    double tauS = veneer.heatPerVolumeJPerM3K() * 0.0005 / veneer.surfaceWPerM2K();
    double[] timesS = every(tauS / 5, 21);
    double[] faceC = BoardLag.surfaceTempsC(veneer, timesS, steady(10, 21), 20);
    Deviation deviation = new Deviation("K");
    for (int i = 0; i < timesS.length; i++) {
      deviation.add(faceC[i], 10 + 10 * Math.exp(-timesS[i] / tauS), timesS[i] + " s");
    }
    assertThat(veneer.biot()).isLessThan(0.01);
    assertThat(BoardLag.timeConstantS(veneer)).isCloseTo(tauS, within(tauS * 0.003));
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(0.02);
  }

  /**
   * Half-space with surface resistance, Carslaw and Jaeger, 2nd ed., section 2.7: the face at time
   * t has gone 1 - exp(x²) erfc(x) of the way, x = h √(α t) / k. A thick slab is one until heat
   * reaches its back.
   */
  @Test
  void thickSlabBeginsAsAHalfSpaceWithinTwoHundredthsOfAKelvin() {
    Board slab = cherry(150, Faces.ONE);
    double[] timesS = every(300, 25);
    double[] faceC = BoardLag.surfaceTempsC(slab, timesS, steady(25, 25), 5);
    double diffusivity = slab.conductivityWPerMK() / slab.heatPerVolumeJPerM3K();
    Deviation deviation = new Deviation("K");
    for (int i = 1; i < timesS.length; i++) {
      double x =
          slab.surfaceWPerM2K() * Math.sqrt(diffusivity * timesS[i]) / slab.conductivityWPerMK();
      deviation.add(faceC[i], 5 + 20 * (1 - scaledErfc(x)), timesS[i] + " s");
    }
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(0.02);
  }

  /** exp(x²) erfc(x) = 2/√π ∫₀^∞ exp(-u² - 2 x u) du, by Simpson's rule. */
  private static double scaledErfc(double x) {
    int intervals = 4000;
    double step = 8.0 / intervals;
    double sum = 1;
    for (int i = 1; i < intervals; i++) {
      double u = i * step;
      sum += (i % 2 == 0 ? 2 : 4) * Math.exp(-u * u - 2 * x * u);
    }
    return 2 / Math.sqrt(Math.PI) * sum * step / 3;
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

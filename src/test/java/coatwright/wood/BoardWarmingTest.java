package coatwright.wood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.Deviation;
import coatwright.quantity.OutOfRange;
import coatwright.wood.Board.Faces;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class BoardWarmingTest {
  private static Board cherry(double thicknessMm, Faces faces) {
    return Board.ofWood(thicknessMm, faces, 0.5, 8);
  }

  /**
   * Incropera et al., 7th ed., Table 5.1, plane wall, ζ₁ and C₁ to four decimals; equations 5.43b
   * and 5.44 give the face once the second term is gone: here from a Fourier number of 0.7 on.
   */
  @Test
  void followsTheOneTermSolutionOfThePrintedTable() {
    WoodChecks.WARMING.holds();
  }

  /** Values of exp(x²) erfc(x), Abramowitz and Stegun, Table 7.1 and its continuation. */
  @Test
  void scaledErrorFunctionIsThatOfTheTables() {
    WoodChecks.ERFC.holds();
  }

  @Test
  void seriesAndContinuedFractionMeet() {
    double below = BoardWarming.scaledErfc(Math.nextDown(2.5));
    assertThat(BoardWarming.scaledErfc(2.5)).isCloseTo(below, within(1e-11));
  }

  @ParameterizedTest
  @CsvSource({"0.1", "1", "10"})
  void halfSpaceAndSeriesMeet(double biot) {
    Board board = WoodChecks.wall(biot);
    double atS = WoodChecks.secondsAt(board, 0.05);
    double before = BoardWarming.faceShare(board, atS * (1 - 1e-12));
    double after = BoardWarming.faceShare(board, atS * (1 + 1e-12));
    assertThat(after).isCloseTo(before, within(1e-8));
  }

  /** The finite volumes of the lag, another method, on one step of 20 K. */
  @ParameterizedTest
  @EnumSource(Faces.class)
  void agreesWithTheLagOfTheSameBoardWithinTwoHundredthsOfAKelvin(Faces faces) {
    Board board = cherry(25, faces);
    double tauS = BoardLag.timeConstantS(board);
    double[] timesS = new double[41];
    double[] airC = new double[41];
    for (int i = 0; i < 41; i++) {
      timesS[i] = i * tauS / 10;
      airC[i] = 25;
    }
    double[] lagC = BoardLag.surfaceTempsC(board, timesS, airC, 5);
    Deviation deviation = new Deviation("K");
    for (int i = 1; i < 41; i++) {
      deviation.add(5 + 20 * BoardWarming.faceShare(board, timesS[i]), lagC[i], timesS[i] + " s");
    }
    assertThat(deviation.largest()).as("%s", deviation).isLessThan(0.02);
  }

  @Property(tries = 200, seed = "20261125")
  void timeForAShareUndoesShareAtATime(
      @ForAll @DoubleRange(min = 0.5, max = 200) double thicknessMm,
      @ForAll @DoubleRange(min = 0, max = 0.99) double share,
      @ForAll Faces faces) {
    Board board = cherry(thicknessMm, faces);
    double seconds = BoardWarming.secondsToShare(board, share);
    assertThat(BoardWarming.faceShare(board, seconds)).isCloseTo(share, within(1e-7));
  }

  @Property(tries = 200, seed = "20261125")
  void faceComesNearerAndNearer(
      @ForAll @DoubleRange(min = 3, max = 100) double thicknessMm,
      @ForAll @DoubleRange(min = 1, max = 50_000) double seconds) {
    Board board = cherry(thicknessMm, Faces.BOTH);
    double share = BoardWarming.faceShare(board, seconds);
    assertThat(share).isBetween(0.0, 1.0);
    assertThat(BoardWarming.faceShare(board, seconds * 1.1)).isGreaterThanOrEqualTo(share);
    assertThat(BoardWarming.faceShare(cherry(thicknessMm, Faces.ONE), seconds))
        .isLessThanOrEqualTo(share + 1e-9);
  }

  /** A board in the air on both sides is two of half its thickness, each on its back. */
  @Test
  void bothFacesAreAsQuickAsOneOfHalfTheThickness() {
    Board both = cherry(36, Faces.BOTH);
    Board half = cherry(18, Faces.ONE);
    assertThat(BoardWarming.faceShare(both, 1800))
        .isCloseTo(BoardWarming.faceShare(half, 1800), within(1e-12));
    assertThat(BoardWarming.secondsToShare(both, 0.7))
        .isLessThan(BoardWarming.secondsToShare(cherry(36, Faces.ONE), 0.7));
  }

  @Test
  void refusesATimeOrShareThatIsNone() {
    Board board = cherry(18, Faces.BOTH);
    assertThatThrownBy(() -> BoardWarming.faceShare(board, -1)).isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> BoardWarming.secondsToShare(board, 1))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("share of the way");
  }
}

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

class MoistureEqualisingTest {
  /**
   * Crank, "The Mathematics of Diffusion", 2nd ed., section 10.6: a sheet of thickness L has taken
   * up half at D t / L² = 0.049.
   */
  @Test
  void halfOfItIsThereAtCranksHalfTime() {
    WoodChecks.HALF_TIME.holds();
  }

  /**
   * A plane sheet solved by explicit differences, nothing in common with the series but the
   * equation: mean moisture after Fourier numbers 0.02, 0.1, 0.5 and 1.
   */
  @Test
  void meanMoistureIsThatOfAPlainFiniteDifferenceSheet() {
    int cells = 200;
    double[] value = new double[cells];
    double dx = 1.0 / cells;
    double dt = 0.4 * dx * dx;
    double[] wanted = {0.02, 0.1, 0.5, 1.0};
    int next = 0;
    for (long step = 1; next < wanted.length; step++) {
      double[] flux = new double[cells + 1];
      flux[0] = 2 * (1 - value[0]) / dx;
      for (int i = 1; i < cells; i++) {
        flux[i] = (value[i - 1] - value[i]) / dx;
      }
      double mean = 0;
      for (int i = 0; i < cells; i++) {
        value[i] += dt / dx * (flux[i] - flux[i + 1]);
        mean += value[i] * dx;
      }
      if (step * dt >= wanted[next]) {
        assertThat(MoistureEqualising.meanShare(step * dt))
            .as("Fo %s", wanted[next])
            .isCloseTo(mean, within(3e-4));
        next++;
      }
    }
    assertThat(next).isEqualTo(4);
  }

  @Test
  void shortAndLongTimesMeet() {
    assertThat(MoistureEqualising.meanShare(0.05))
        .isCloseTo(MoistureEqualising.meanShare(Math.nextDown(0.05)), within(1e-5));
    assertThat(MoistureEqualising.meanShare(0)).isZero();
  }

  /** Time goes with the square of the thickness, and one face is as twice the thickness. */
  @Property(tries = 200, seed = "20261125")
  void twiceTheThicknessTakesFourTimesAsLong(
      @ForAll @DoubleRange(min = 1, max = 90) double thicknessMm,
      @ForAll @DoubleRange(min = 0.01, max = 0.99) double share) {
    double days = MoistureEqualising.days(thicknessMm, Faces.BOTH, 5e-11, share);
    assertThat(MoistureEqualising.days(2 * thicknessMm, Faces.BOTH, 5e-11, share))
        .isCloseTo(4 * days, within(1e-9 * (1 + days)));
    assertThat(MoistureEqualising.days(thicknessMm, Faces.ONE, 5e-11, share))
        .isCloseTo(4 * days, within(1e-9 * (1 + days)));
    assertThat(MoistureEqualising.days(thicknessMm, Faces.BOTH, 5e-11, share + 0.005))
        .isGreaterThan(days);
  }

  @Test
  void aBoardIsGivenARangeOfDays() {
    MoistureEqualising.Days days = MoistureEqualising.estimate(18, Faces.BOTH, 0.9);
    assertThat(days.quickestDays()).isBetween(7.5, 8.5);
    assertThat(days.slowestDays()).isCloseTo(3 * days.quickestDays(), within(1e-9));
  }

  @Test
  void refusesABoardOrShareThatIsNone() {
    assertThatThrownBy(() -> MoistureEqualising.estimate(0, Faces.BOTH, 0.9))
        .isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> MoistureEqualising.estimate(18, Faces.BOTH, 1))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("share of the way");
    assertThatThrownBy(() -> MoistureEqualising.days(18, Faces.BOTH, 1, 0.5))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("diffusivity");
  }
}

package coatwright.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.function.Consumer;

/**
 * One comparison with something outside the project: the room's tests hold it, and the register of
 * the physics prints how far it stands off. Both run this one function.
 *
 * @param kind what stands on the other side
 * @param question what is compared
 * @param against the source of the other value
 * @param range where it was compared
 * @param allowed the largest deviation with which it passes
 * @param unit of the deviation
 * @param compare enters every pair
 */
public record OutsideCheck(
    Kind kind,
    String question,
    String against,
    String range,
    double allowed,
    String unit,
    Consumer<Deviation> compare) {
  /** What a value was compared with; the weaker the farther down. */
  public enum Kind {
    /** A number a reader can find printed. */
    PRINTED("printed"),
    /** A measurement others published. */
    MEASURED("measured"),
    /** A program, not of this project, that follows a published equation. */
    PROGRAM("program"),
    /** A solution or equation of a textbook, worked beside ours. */
    EQUATION("equation"),
    /** Our own prototype, or what the trade says: agreement, not truth, and not counted. */
    OWN("own");

    private final String word;

    Kind(String word) {
      this.word = word;
    }
  }

  /** Below this a deviation is the arithmetic's last digits, which no two machines share. */
  private static final double LAST_DIGITS = 1e-9;

  private static final MathContext TWO_DIGITS = new MathContext(2);

  /** Counts among the outside checks. */
  public boolean outside() {
    return kind != Kind.OWN;
  }

  private Deviation measured() {
    Deviation deviation = new Deviation(unit);
    compare.accept(deviation);
    assertThat(deviation.count()).as("values compared: %s, %s", question, against).isPositive();
    return deviation;
  }

  /** Fails when the largest deviation is more than is allowed, or nothing was compared. */
  public void holds() {
    holding(measured());
  }

  private void holding(Deviation deviation) {
    assertThat(deviation.largest())
        .as("%s, %s: %s", question, against, deviation)
        .isLessThanOrEqualTo(allowed);
  }

  /** The check's row in the register, after it was held. */
  public String row(String id) {
    Deviation deviation = measured();
    holding(deviation);
    return "| %s | %s | %s | %s | %s | %d | %s | %s |"
        .formatted(
            id,
            question,
            against,
            kind.word,
            range,
            deviation.count(),
            shown(deviation.largest()),
            shown(allowed));
  }

  private String shown(double size) {
    if (size < LAST_DIGITS) {
      return "none";
    }
    BigDecimal rounded = new BigDecimal(size).round(TWO_DIGITS).stripTrailingZeros();
    String digits = rounded.toPlainString();
    if (size < 1e-3) {
      int exponent = rounded.precision() - rounded.scale() - 1;
      digits = rounded.movePointRight(-exponent).toPlainString() + "e" + exponent;
    }
    return digits + " " + unit;
  }
}

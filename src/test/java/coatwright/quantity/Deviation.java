package coatwright.quantity;

import java.util.Locale;

/**
 * The largest disagreement met in a comparison, and where; it goes into the assertion's message.
 */
public final class Deviation {
  private final String unit;
  private double largest;
  private String where = "nothing compared";
  private int count;

  public Deviation(String unit) {
    this.unit = unit;
  }

  /** Compares in the values' own unit. */
  public void add(double ours, double theirs, Object at) {
    take(ours - theirs, at);
  }

  /** Compares as a share of the reference, in parts per million. */
  public void addPpm(double ours, double theirs, Object at) {
    take(1e6 * (ours / theirs - 1), at);
  }

  /** Compares as a share of the reference, in per cent. */
  public void addPct(double ours, double theirs, Object at) {
    take(100 * (ours / theirs - 1), at);
  }

  private void take(double difference, Object at) {
    count++;
    if (!Double.isNaN(largest) && !(Math.abs(difference) <= largest)) {
      largest = Math.abs(difference);
      where = at.toString();
    }
  }

  /** Size of the largest disagreement; not a number if one was. */
  public double largest() {
    return largest;
  }

  /** How many values were compared. */
  public int count() {
    return count;
  }

  @Override
  public String toString() {
    return String.format(
        Locale.ROOT, "largest of %d deviations is %.3g %s at %s", count, largest, unit, where);
  }
}

package coatwright.film;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;

/** Counts dates below, within and above a range. */
final class Tally {
  private final int[] counts = new int[3];

  void add(Percentiles range, double value) {
    double low = range.p10().orElse(Double.POSITIVE_INFINITY);
    double high = range.p90().orElse(Double.POSITIVE_INFINITY);
    counts[value < low ? 0 : value <= high ? 1 : 2]++;
  }

  void isHonest(String of) {
    double all = counts[0] + counts[1] + counts[2];
    String figure =
        String.format(
            Locale.ROOT,
            "%s: %.1f %% within, %.1f %% before, %.1f %% after",
            of,
            100 * counts[1] / all,
            100 * counts[0] / all,
            100 * counts[2] / all);
    System.out.println("coverage of the 80 % range, " + figure);
    assertThat(counts[1] / all).as(figure).isBetween(0.75, 0.85);
  }
}

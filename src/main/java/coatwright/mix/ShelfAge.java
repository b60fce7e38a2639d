package coatwright.mix;

import coatwright.quantity.OutOfRange;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/**
 * How long a jar has stood, and when its drop test falls due. A date, not a verdict: mixed shellac
 * slowly stops hardening, sooner in warmth and in bleached grades, and only the test tells.
 *
 * @param opened the day it was mixed or opened
 * @param testDueMonths age at which the finish's drop test is due, months, 1 to 120
 */
public record ShelfAge(LocalDate opened, int testDueMonths) {
  /** The test of shellac, in words. */
  public static final String DROP_TEST =
      "let a drop dry on glass: hard overnight, or the jar is too old to use";

  /** The test of a finish that is used as it comes, in words. */
  public static final String SCRAP_TEST =
      "brush some on scrap and see whether it dries in its stated time";

  public ShelfAge {
    OutOfRange.check("months to the drop test", testDueMonths, "months", 1, 120);
  }

  /** The day the drop test falls due. */
  public LocalDate testDueOn() {
    return opened.plusMonths(testDueMonths);
  }

  /** Whole months it has stood on a day; 0 before it was opened. */
  public long monthsOn(LocalDate day) {
    return Math.max(0, ChronoUnit.MONTHS.between(opened, day));
  }

  /** Whether the test is due on a day. */
  public boolean isDueOn(LocalDate day) {
    return !day.isBefore(testDueOn());
  }
}

package coatwright.film;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.film.Coverage.Share;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Whether eight in ten truths lie within the range; 75 to 85 in a hundred is asked. */
class CoverageTest {
  private static void areHonest(List<Share> shares) {
    for (Share share : shares) {
      String figure =
          String.format(
              Locale.ROOT,
              "%s: %.1f %% within, %.1f %% before, %.1f %% after",
              share.of(),
              100 * share.within(),
              100 * share.before(),
              100 * share.after());
      System.out.println("coverage of the 80 % range, " + figure);
      assertThat(share.within()).as(figure).isBetween(0.75, 0.85);
    }
  }

  @Test
  void eightInTenSixCoatFilmsAreReadyWithinTheirRangeBeforeAndAfterTwoThumbnailTests() {
    areHonest(Coverage.ofSixCoats());
  }

  @Test
  void theSameHoldsForTheNextPartOfAShopThatHasTaughtItsOwnWays() {
    areHonest(Coverage.ofTheNextPart());
  }

  @Test
  void theRangesOfCloudingTheDewMarginAndTheFirstMilestonesHoldWhatTheyPromise() {
    areHonest(Coverage.ofOneCoat());
  }
}

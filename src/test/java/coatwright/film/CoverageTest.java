package coatwright.film;

import coatwright.film.Coverage.Share;
import org.junit.jupiter.api.Test;

/** Whether eight in ten truths lie within the range; 75 to 85 in a hundred is asked. */
class CoverageTest {
  @Test
  void eightInTenSixCoatFilmsAreReadyWithinTheirRangeBeforeAndAfterTwoThumbnailTests() {
    Coverage.ofSixCoats().forEach(Share::isHonest);
  }

  @Test
  void theSameHoldsForTheNextPartOfAShopThatHasTaughtItsOwnWays() {
    Coverage.ofTheNextPart().forEach(Share::isHonest);
  }

  @Test
  void theRangesOfCloudingTheDewMarginAndTheFirstMilestonesHoldWhatTheyPromise() {
    Coverage.ofOneCoat().forEach(Share::isHonest);
  }
}

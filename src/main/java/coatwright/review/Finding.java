package coatwright.review;

import coatwright.review.Why.AirAtFault;

/** The first sentence and whether the air was the cause. */
record Finding(String sentence, AirAtFault airAtFault) {}

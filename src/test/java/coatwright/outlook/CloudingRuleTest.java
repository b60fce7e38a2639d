package coatwright.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The one rule for clouding, at its edges. The figures of the rule are ours. */
class CloudingRuleTest {
  @ParameterizedTest(name = "spread {0} K, S {1} (p90 {2}), margin {3} K: {4}")
  @CsvSource({
    "0.99, 0.50, 0.60,  5.0, likely",
    "1.00, 0.50, 0.60,  5.0, none expected",
    "-2.0, 0.50, 0.60,  5.0, likely",
    "4.00, 1.20, 1.30,  0.0, likely",
    "4.00, 1.20, 1.30,  0.1, possible",
    "4.00, 1.19, 1.30, -2.0, possible",
    "4.00, 0.90, 1.00,  5.0, possible",
    "4.00, 0.90, 0.99,  5.0, none expected",
    "4.00, 0.90, 0.99, -5.0, none expected",
  })
  void eachEdgeFallsOnItsSide(
      double spreadK, double s50, double s90, double marginK, String level) {
    assertThat(CloudingRule.level(spreadK, s50, s90, marginK)).hasToString(level);
  }

  @Property(seed = "20261125")
  void moreWaterOrColderWoodNeverMakesCloudingLessLikely(
      @ForAll @DoubleRange(min = -5, max = 15) double spreadK,
      @ForAll @DoubleRange(min = 0, max = 2) double s50,
      @ForAll @DoubleRange(min = -8, max = 8) double marginK,
      @ForAll @DoubleRange(min = 0, max = 1) double more) {
    double s90 = 1.15 * s50;
    Outlook.CloudingLevel was = CloudingRule.level(spreadK, s50, s90, marginK);

    assertThat(was.compareTo(CloudingRule.level(spreadK, s50 + more, s90 + more, marginK)))
        .as("likely stands first")
        .isNotNegative();
    assertThat(was.compareTo(CloudingRule.level(spreadK - more, s50, s90, marginK - more)))
        .isNotNegative();
  }
}

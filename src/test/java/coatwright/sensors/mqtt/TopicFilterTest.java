package coatwright.sensors.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** MQTT Version 3.1.1, OASIS Standard, section 4.7. */
class TopicFilterTest {
  @ParameterizedTest
  @CsvSource({
    "shop/+/temperature, shop/bench/temperature, true",
    "shop/+/temperature, shop/bench/a/temperature, false",
    "shop/#, shop, true",
    "shop/#, shop/bench/temperature, true",
    "shop/#, shopping, false",
    "shop/bench, shop/bench/temperature, false",
    "shop/+, shop/, true",
    "shop/+, shop, false"
  })
  void matchesAsTheStandardSays(String filter, String topic, boolean matches) {
    assertThat(TopicFilter.matches(filter, topic)).isEqualTo(matches);
  }

  @Test
  void givesTheLevelsThatPlusCaught() {
    assertThat(TopicFilter.captures("shop/+/+/t", "shop/bench/3/t"))
        .contains(List.of("bench", "3"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "#", "+", "+/#", "shop/#/t", "shop/a#", "shop/a+/t"})
  void refusesAFilterThatIsBrokenOrTakesInEverything(String filter) {
    assertThat(TopicFilter.faultOf(filter)).isPresent();
  }

  @ParameterizedTest
  @ValueSource(strings = {"shop/bench/t", "shop/+/t", "shop/#", "/shop"})
  void takesAnOrdinaryFilter(String filter) {
    assertThat(TopicFilter.faultOf(filter)).isEmpty();
  }
}

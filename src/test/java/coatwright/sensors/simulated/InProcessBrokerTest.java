package coatwright.sensors.simulated;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class InProcessBrokerTest {
  @Test
  void reportsNothingHomeAndListensOnLoopbackOnly() {
    var settings = InProcessBroker.settings(18883);

    assertThat(settings.getProperty("telemetry_enabled")).isEqualTo("false");
    assertThat(settings.getProperty("host")).isEqualTo("127.0.0.1");
    assertThat(settings.getProperty("persistence_enabled")).isEqualTo("false");
    assertThat(settings.getProperty("port")).isEqualTo("18883");
  }
}

package coatwright.sensors.simulated;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.util.Optional;
import java.util.Properties;
import org.junit.jupiter.api.Test;

class InProcessBrokerTest {
  private static final InetAddress HERE = InetAddress.getLoopbackAddress();

  @Test
  void reportsNothingHomeAndKeepsNothingOnDisk() {
    Properties settings = InProcessBroker.settings(HERE, 18883, false);

    assertThat(settings.getProperty("telemetry_enabled")).isEqualTo("false");
    assertThat(settings.getProperty("host")).isEqualTo("127.0.0.1");
    assertThat(settings.getProperty("persistence_enabled")).isEqualTo("false");
    assertThat(settings.getProperty("port")).isEqualTo("18883");
    assertThat(settings.getProperty("allow_anonymous")).isEqualTo("true");
  }

  @Test
  void withALoginReportsNothingHomeEitherAndLetsNobodyInWithout() {
    Properties settings = InProcessBroker.settings(HERE, 18883, true);

    assertThat(settings.getProperty("telemetry_enabled")).isEqualTo("false");
    assertThat(settings.getProperty("allow_anonymous")).isEqualTo("false");
  }

  @Test
  void doesNotOpenToOthersWithoutAPassword() {
    assertThatThrownBy(() -> InProcessBroker.open("0.0.0.0", 18884, Optional.empty()).close())
        .isInstanceOf(InProcessBroker.CannotStart.class)
        .hasMessageContaining("would let anyone in at 0.0.0.0; give it user and password-file");
  }

  @Test
  void saysThatItsPortIsTaken() throws IOException {
    try (ServerSocket taken = new ServerSocket(0, 1, HERE)) {
      assertThatThrownBy(
              () ->
                  InProcessBroker.open("127.0.0.1", taken.getLocalPort(), Optional.empty()).close())
          .isInstanceOf(InProcessBroker.CannotStart.class)
          .hasMessageContaining("taken by another program");
    }
  }
}

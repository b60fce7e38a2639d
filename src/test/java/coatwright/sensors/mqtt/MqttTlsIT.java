package coatwright.sensors.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.sensors.Command;
import coatwright.sensors.Eventually;
import coatwright.sensors.Mosquitto;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Encrypted links with a shop's own authority, and logins, against a real broker. */
class MqttTlsIT {
  private static final Duration SOON = Duration.ofSeconds(20);
  private static final String HERE = "DNS:localhost,IP:127.0.0.1";

  @TempDir Path directory;

  private final MqttListener deaf =
      new MqttListener() {
        @Override
        public void message(String topic, byte[] bytes, boolean retained) {}

        @Override
        public void tooLong(String topic, int bytes) {}

        @Override
        public void changed() {}
      };

  private static Mosquitto broker(
      Path directory, Path certificate, Authority authority, String of) {
    return new Mosquitto(
        directory,
        "allow_anonymous true",
        "certfile " + certificate,
        "keyfile " + authority.key(of));
  }

  private MqttLink link(URI url, Optional<Path> ca) {
    return new MqttLink(
        new Broker("house", url, Optional.empty(), Optional.empty(), ca, "tls-it"),
        List.of("a/b"),
        deaf);
  }

  private String troubleOf(URI url, Optional<Path> ca) {
    try (MqttLink link = link(url, ca)) {
      link.start();
      Eventually.within(SOON, "a trouble is named", () -> link.trouble().isPresent());
      assertThat(link.connected()).isFalse();
      return link.trouble().orElseThrow();
    }
  }

  @Test
  void trustsTheShopsOwnAuthorityAndNoOther() {
    Authority ours = new Authority(directory, "ours");
    Authority theirs = new Authority(directory, "theirs");
    try (Mosquitto broker = broker(directory, ours.sign("shop", HERE), ours, "shop")) {
      try (MqttLink link = link(broker.tlsUrl(), Optional.of(ours.certificate()))) {
        link.start();
        Eventually.within(SOON, "connected over TLS", link::connected);
        assertThat(link.trouble()).isEmpty();
      }
      assertThat(troubleOf(broker.tlsUrl(), Optional.of(theirs.certificate())))
          .contains("is not signed by the authority of " + theirs.certificate())
          .contains("check ca");
      assertThat(troubleOf(broker.tlsUrl(), Optional.empty()))
          .contains("an authority this machine does not know; name your own with ca");
      assertThat(troubleOf(broker.tlsUrl(), Optional.of(directory.resolve("none.pem"))))
          .contains("none.pem cannot be used; check the file and its permissions");
    }
  }

  @Test
  void refusesACertificateForAnotherHost() {
    Authority ours = new Authority(directory, "ours");
    try (Mosquitto broker =
        broker(directory, ours.sign("other", "DNS:elsewhere.example"), ours, "other")) {
      assertThat(troubleOf(broker.tlsUrl(), Optional.of(ours.certificate())))
          .contains("its certificate is for another name than localhost")
          .contains("make one for this name");
    }
  }

  @Test
  void namesTheClockWhenACertificateIsNotYetValid() {
    Authority ours = new Authority(directory, "ours");
    Path later = ours.signLater("later", HERE, "+20d");
    try (Mosquitto broker = broker(directory, later, ours, "later")) {
      assertThat(troubleOf(broker.tlsUrl(), Optional.of(ours.certificate())))
          .contains("its certificate is not yet valid")
          .contains("by the clock of this machine, which says 20")
          .contains("set the clock");
    }
  }

  @Test
  void saysThatAPlainPortIsNoTlsPort() {
    try (Mosquitto broker = new Mosquitto(directory)) {
      assertThat(troubleOf(broker.tlsUrl(), Optional.empty())).contains("is this its TLS port?");
    }
  }

  @Test
  void logsInWithThePasswordOfTheFileAsItIsAtThatMoment() throws IOException {
    Path logins = directory.resolve("logins");
    Files.writeString(logins, "finisher:old and wrong\n");
    Command.run("mosquitto_passwd", "-b", logins.toString(), "finisher", "linseed and wax");
    Path password = Files.writeString(directory.resolve("password"), "another\n");
    try (Mosquitto broker =
            new Mosquitto(directory, "allow_anonymous false", "password_file " + logins);
        MqttLink link =
            new MqttLink(
                new Broker(
                    "house",
                    broker.url(),
                    Optional.of("finisher"),
                    Optional.of(password),
                    Optional.empty(),
                    "login-it"),
                List.of("a/b"),
                deaf)) {
      link.start();
      Eventually.within(SOON, "refused", () -> link.trouble().isPresent());
      assertThat(link.trouble().orElseThrow())
          .contains("user or password not accepted; check user and password-file")
          .doesNotContain("another");

      Files.writeString(password, "linseed and wax\n");
      Eventually.within(SOON, "let in once the file is right", link::connected);
      assertThat(link.trouble()).isEmpty();
    }
  }
}

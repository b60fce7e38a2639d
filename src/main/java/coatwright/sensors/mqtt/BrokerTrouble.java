package coatwright.sensors.mqtt;

import java.io.EOFException;
import java.net.ConnectException;
import java.net.NoRouteToHostException;
import java.net.SocketException;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import java.security.cert.CertPathBuilderException;
import java.security.cert.CertificateException;
import java.security.cert.CertificateExpiredException;
import java.security.cert.CertificateNotYetValidException;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.net.ssl.SSLException;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.jspecify.annotations.Nullable;

/** Why a broker cannot be used, in words a person can act on. */
final class BrokerTrouble {
  private static final int DEEPEST = 12;

  private BrokerTrouble() {}

  static String sentence(Broker broker, @Nullable Throwable cause) {
    return "broker %s at %s: %s".formatted(broker.name(), broker.url(), reason(broker, cause));
  }

  private static String reason(Broker broker, @Nullable Throwable failure) {
    List<Throwable> causes = new ArrayList<>();
    for (Throwable at = failure; at != null && causes.size() < DEEPEST; at = at.getCause()) {
      causes.add(at);
    }
    return network(causes)
        .or(() -> certificate(broker, causes))
        .or(() -> refusal(causes))
        .orElseGet(
            () ->
                failure == null
                    ? "connection lost"
                    : "connection lost or refused (" + failure.getMessage() + ")");
  }

  private static Optional<String> network(List<Throwable> causes) {
    for (Throwable cause : causes) {
      if (cause instanceof BrokerSecret.Unreadable) {
        return Optional.of(cause.getMessage() + "; check the file and its permissions");
      }
      if (cause instanceof UnknownHostException) {
        return Optional.of("its name is not known; check the url");
      }
      if (cause instanceof NoRouteToHostException) {
        return Optional.of("no way to it; check the network and the url");
      }
      if (cause instanceof ConnectException) {
        return Optional.of("nobody answers; is the broker running?");
      }
      if (cause instanceof SocketTimeoutException) {
        return Optional.of("it does not answer in time");
      }
    }
    return Optional.empty();
  }

  /** The deepest reason is the true one: the outer ones only say that trust failed. */
  private static Optional<String> certificate(Broker broker, List<Throwable> causes) {
    Optional<String> found = Optional.empty();
    for (Throwable cause : causes) {
      if (cause instanceof CertificateNotYetValidException) {
        return Optional.of(
            "its certificate is not yet valid (%s) by the clock of this machine, which says %s; set the clock"
                .formatted(
                    cause.getMessage(),
                    Clock.systemUTC().instant().truncatedTo(ChronoUnit.SECONDS)));
      }
      if (cause instanceof CertificateExpiredException) {
        return Optional.of(
            "its certificate has expired (%s) by the clock of this machine, which says %s; make a new one, or set the clock"
                .formatted(
                    cause.getMessage(),
                    Clock.systemUTC().instant().truncatedTo(ChronoUnit.SECONDS)));
      }
      if (cause instanceof CertPathBuilderException) {
        found =
            Optional.of(
                broker
                    .ca()
                    .map(
                        file ->
                            "its certificate is not signed by the authority of "
                                + file
                                + "; check ca")
                    .orElse(
                        "its certificate is signed by an authority this machine does not know;"
                            + " name your own with ca"));
      } else if (cause instanceof CertificateException && namesAnother(cause)) {
        found =
            Optional.of(
                "its certificate is for another name than %s (%s); write the name it is for in url, or make one for this name"
                    .formatted(broker.url().getHost(), cause.getMessage()));
      } else if (found.isEmpty() && (cause instanceof SSLException || brokenOff(broker, cause))) {
        found =
            Optional.of(
                "no encrypted connection (%s); is this its TLS port?"
                    .formatted(cause.getMessage()));
      }
    }
    return found;
  }

  /** A plain port does not understand the greeting of TLS, and closes. */
  private static boolean brokenOff(Broker broker, Throwable cause) {
    return "ssl".equals(broker.url().getScheme())
        && (cause instanceof SocketException || cause instanceof EOFException);
  }

  /** The library's own words for it; there is no type. */
  private static boolean namesAnother(Throwable cause) {
    String message = String.valueOf(cause.getMessage());
    return message.startsWith("No subject alternative") || message.startsWith("No name matching");
  }

  private static Optional<String> refusal(List<Throwable> causes) {
    for (Throwable cause : causes) {
      if (cause instanceof MqttException refused && refusal(refused) != null) {
        return Optional.ofNullable(refusal(refused));
      }
    }
    return Optional.empty();
  }

  private static @Nullable String refusal(MqttException e) {
    return switch (e.getReasonCode()) {
      case MqttException.REASON_CODE_FAILED_AUTHENTICATION,
          MqttException.REASON_CODE_NOT_AUTHORIZED ->
          "user or password not accepted; check user and password-file";
      case MqttException.REASON_CODE_INVALID_CLIENT_ID ->
          "the client id is not accepted; change client-id";
      case MqttException.REASON_CODE_CLIENT_TIMEOUT -> "it does not answer in time";
      case MqttException.REASON_CODE_SUBSCRIBE_FAILED ->
          "a subscription was refused; check the broker's access rules";
      default -> null;
    };
  }
}

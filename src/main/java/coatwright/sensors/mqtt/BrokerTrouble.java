package coatwright.sensors.mqtt;

import java.net.ConnectException;
import java.net.UnknownHostException;
import java.security.cert.CertificateException;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.jspecify.annotations.Nullable;

/** Why a broker cannot be used, in words a person can act on. */
final class BrokerTrouble {
  private static final int DEEPEST = 8;

  private BrokerTrouble() {}

  static String sentence(Broker broker, @Nullable Throwable cause) {
    return "broker %s at %s: %s".formatted(broker.name(), broker.url(), reason(cause));
  }

  private static String reason(@Nullable Throwable cause) {
    Throwable at = cause;
    for (int depth = 0; at != null && depth < DEEPEST; depth++) {
      if (at instanceof ConnectException) {
        return "nobody answers; is the broker running?";
      }
      if (at instanceof UnknownHostException) {
        return "its name is not known; check the url";
      }
      if (at instanceof CertificateException) {
        return "its certificate is not trusted (" + at.getMessage() + "); check ca and the clock";
      }
      if (at instanceof BrokerSecret.Unreadable) {
        return at.getMessage() + "; check the file and its permissions";
      }
      if (at instanceof MqttException mqtt && refusal(mqtt) != null) {
        return String.valueOf(refusal(mqtt));
      }
      at = at.getCause();
    }
    return cause == null
        ? "connection lost"
        : "connection lost or refused (" + cause.getMessage() + ")";
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

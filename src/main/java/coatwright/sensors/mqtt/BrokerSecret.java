package coatwright.sensors.mqtt;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.CertificateFactory;
import java.util.List;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;

/** Password and certificate authority, read anew at every connect so that they can be changed. */
final class BrokerSecret {
  /**
   * A message of the longest kind that is looked at, its topic, and enough to show it is longer.
   */
  private static final int LONGEST_PACKET = 3 * MqttLink.MOST_BYTES;

  private BrokerSecret() {}

  /** A file the settings name cannot be used. */
  static final class Unreadable extends RuntimeException {
    Unreadable(String message, Throwable cause) {
      super(message, cause);
    }
  }

  static void into(MqttConnectOptions options, Broker broker) {
    broker.user().ifPresent(options::setUserName);
    broker.passwordFile().ifPresent(file -> options.setPassword(firstLine(file).toCharArray()));
    if ("tcp".equals(broker.url().getScheme())) {
      options.setSocketFactory(new ShortenedSockets(LONGEST_PACKET));
    }
    broker.ca().ifPresent(file -> options.setSocketFactory(trusting(file).getSocketFactory()));
  }

  private static String firstLine(Path file) {
    try {
      List<String> lines = Files.readAllLines(file);
      return lines.isEmpty() ? "" : lines.get(0);
    } catch (IOException e) {
      throw new Unreadable("the password file " + file + " cannot be read", e);
    }
  }

  private static SSLContext trusting(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      KeyStore store = KeyStore.getInstance(KeyStore.getDefaultType());
      store.load(null, null);
      int index = 0;
      for (Certificate each : CertificateFactory.getInstance("X.509").generateCertificates(in)) {
        store.setCertificateEntry("ca-" + index++, each);
      }
      TrustManagerFactory trust =
          TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
      trust.init(store);
      SSLContext context = SSLContext.getInstance("TLS");
      context.init(null, trust.getTrustManagers(), null);
      return context;
    } catch (IOException | GeneralSecurityException e) {
      throw new Unreadable("the certificate authority " + file + " cannot be used", e);
    }
  }
}

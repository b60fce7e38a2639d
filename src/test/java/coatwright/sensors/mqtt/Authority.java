package coatwright.sensors.mqtt;

import coatwright.sensors.Command;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A certificate authority made for a test, and the certificates it signs. */
final class Authority {
  private static final String KEY = "ec";
  private static final String CURVE = "ec_paramgen_curve:prime256v1";

  private final Path directory;
  private final String name;

  Authority(Path directory, String name) {
    this.directory = directory;
    this.name = name;
    Command.run(
        "openssl",
        "req",
        "-x509",
        "-newkey",
        KEY,
        "-pkeyopt",
        CURVE,
        "-nodes",
        "-days",
        "30",
        "-subj",
        "/CN=" + name,
        "-keyout",
        key(name).toString(),
        "-out",
        certificate().toString());
  }

  /** Its own certificate, as a shop would name it under {@code ca}. */
  Path certificate() {
    return pem(name);
  }

  /** A broker's certificate for a host, valid from now. */
  Path sign(String broker, String hosts) {
    return sign(broker, hosts, List.of());
  }

  /** The same, signed as if it were that much later. */
  Path signLater(String broker, String hosts, String later) {
    return sign(broker, hosts, List.of("faketime", "-f", later));
  }

  private Path sign(String broker, String hosts, List<String> before) {
    Path request = directory.resolve(broker + ".csr");
    Path extension = directory.resolve(broker + ".ext");
    try {
      Files.writeString(extension, "subjectAltName=" + hosts + "\n");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    Command.run(
        "openssl",
        "req",
        "-new",
        "-newkey",
        KEY,
        "-pkeyopt",
        CURVE,
        "-nodes",
        "-subj",
        "/CN=" + broker,
        "-keyout",
        key(broker).toString(),
        "-out",
        request.toString());
    List<String> words = new ArrayList<>(before);
    words.addAll(
        List.of(
            "openssl",
            "x509",
            "-req",
            "-days",
            "10",
            "-in",
            request.toString(),
            "-CA",
            certificate().toString(),
            "-CAkey",
            key(name).toString(),
            "-CAcreateserial",
            "-extfile",
            extension.toString(),
            "-out",
            pem(broker).toString()));
    Command.run(words.toArray(String[]::new));
    return pem(broker);
  }

  Path key(String of) {
    return directory.resolve(of + ".key");
  }

  private Path pem(String of) {
    return directory.resolve(of + ".pem");
  }
}

package coatwright.web;

/** The web door cannot be opened. */
public final class WebException extends RuntimeException {
  WebException(String message, Throwable cause) {
    super(message, cause);
  }
}

package coatwright.sensors;

/** Where something stands in a payload, checked by the payload's form. */
final class Places {
  private Places() {}

  static void check(Fields at, String word, String place, PayloadKind kind, boolean starAllowed) {
    if (!kind.ofJson()) {
      return;
    }
    boolean pointer = place.isEmpty() || (place.startsWith("/") && escapesAreWhole(place));
    boolean star = place.endsWith("/*");
    if (!pointer || (star && !starAllowed) || (starAllowed && !star)) {
      at.fault(
          word,
          starAllowed ? "is not a JSON Pointer ending in /*" : "is not a JSON Pointer",
          starAllowed ? "write it like /probes/*" : "write it like /climate/temperature");
    }
  }

  /** RFC 6901, section 3: a tilde stands only in ~0 and ~1. */
  private static boolean escapesAreWhole(String place) {
    for (int at = place.indexOf('~'); at >= 0; at = place.indexOf('~', at + 1)) {
      boolean whole = at + 1 < place.length() && "01".indexOf(place.charAt(at + 1)) >= 0;
      if (!whole) {
        return false;
      }
    }
    return true;
  }
}

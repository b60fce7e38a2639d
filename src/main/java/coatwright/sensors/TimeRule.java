package coatwright.sensors;

import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/**
 * Where a payload says when it was measured.
 *
 * @param forms tried in order
 * @param zone needed by {@code local}
 * @param trustPayload false: the payload's time is only looked at, the arrival counts
 */
public record TimeRule(String at, List<Form> forms, Optional<ZoneId> zone, boolean trustPayload) {
  public TimeRule {
    forms = List.copyOf(forms);
  }

  /** A way of writing a time. */
  public enum Form {
    RFC3339("rfc3339"),
    EPOCH_AUTO("epoch-auto"),
    EPOCH_S("epoch-s"),
    LOCAL("local"),
    /** As RFC 8428 counts: from 1970, or from now where the number is small. */
    SENML("senml");

    private final String word;

    Form(String word) {
      this.word = word;
    }

    @Override
    public String toString() {
      return word;
    }
  }
}

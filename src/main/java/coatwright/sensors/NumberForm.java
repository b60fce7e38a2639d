package coatwright.sensors;

import java.util.List;

/** A payload that is one number and nothing else. */
final class NumberForm implements PayloadForm {
  @Override
  public Opened open(PayloadText payload) {
    Cell whole = new Cell.Words(payload.trimmed());
    return new Opened.Parts(List.of(place -> place.isEmpty() ? whole : Cell.ABSENT));
  }
}

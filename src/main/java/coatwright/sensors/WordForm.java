package coatwright.sensors;

import java.util.Optional;

/** A payload that is one word and says whether a node is there. Carries no reading. */
final class WordForm implements PayloadForm {
  private final Transport.Presence presence;

  WordForm(Transport.Presence presence) {
    this.presence = presence;
  }

  @Override
  public Opened open(PayloadText payload) {
    String word = payload.trimmed();
    Optional<Boolean> there = presence.says(word);
    return there
        .map(
            is ->
                new Opened.No(
                    "presence message: %s (\"%s\")".formatted(is ? "present" : "absent", word),
                    true,
                    there))
        .orElseGet(
            () ->
                new Opened.No(
                    "\"%s\" is neither a word for present nor for absent; add it to presence"
                        .formatted(Text.shortened(word))));
  }
}

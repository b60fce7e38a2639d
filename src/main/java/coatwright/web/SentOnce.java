package coatwright.web;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Answers a form sent twice under one {@code Idempotency-Key} with the first answer, so that a
 * press repeated over a bad line is one coat. Remembers the last 1,000 keys, while the daemon runs.
 * Forms under one key wait for each other; so do all writes, which the ledger puts in order anyway.
 */
final class SentOnce {
  private static final int REMEMBERED = 1_000;
  private static final int LONGEST_KEY = 200;

  private final Map<String, Sent> answers =
      new LinkedHashMap<>() {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Sent> eldest) {
          return size() > REMEMBERED;
        }
      };

  private record Sent(String form, String answer) {}

  /** The answer to this form: written now, or the one given before under the same key. */
  synchronized String answer(Optional<String> key, String form, Supplier<String> write) {
    if (key.isEmpty()) {
      return write.get();
    }
    if (key.get().isBlank() || key.get().length() > LONGEST_KEY) {
      throw new Problem.Thrown(
          Problem.of(
              400,
              "bad-key",
              "Idempotency-Key cannot be used",
              "an Idempotency-Key is 1 to "
                  + LONGEST_KEY
                  + " characters; send a fresh random one"));
    }
    Sent before = answers.get(key.get());
    if (before != null) {
      if (!before.form().equals(form)) {
        throw new Problem.Thrown(
            Problem.of(
                409,
                "key-used",
                "Idempotency-Key used for another form",
                "this Idempotency-Key already stands for another form; send a fresh one"));
      }
      return before.answer();
    }
    String answer = write.get();
    answers.put(key.get(), new Sent(form, answer));
    return answer;
  }
}

package coatwright.store.influx;

import coatwright.store.Outbox.Parked;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * The delivery of one batch. Where a server refuses a batch for what is in it, the batch is halved
 * until the lines it will not have stand alone; the others are sent without them. A line sent twice
 * on the way replaces itself.
 *
 * @param stored lines the server has
 * @param tooOld lines older than the server keeps any
 * @param refused lines it will not have, each with its reason
 * @param away why it could not be finished, in which case none of the above counts
 */
record Delivery(long stored, long tooOld, List<Parked> refused, Optional<Answer.Away> away) {
  private static final String TOO_OLD = "retention policy";

  /** Delivers lines. */
  static Delivery of(List<String> lines, Function<List<String>, Answer> server) {
    Carrier carrier = new Carrier(server);
    if (!lines.isEmpty()) {
      carrier.carry(lines);
    }
    return new Delivery(
        carrier.stored,
        carrier.tooOld,
        List.copyOf(carrier.refused),
        Optional.ofNullable(carrier.away));
  }

  private static final class Carrier {
    private final Function<List<String>, Answer> server;
    private final List<Parked> refused = new ArrayList<>();
    private long stored;
    private long tooOld;
    private Answer.@Nullable Away away;

    Carrier(Function<List<String>, Answer> server) {
      this.server = server;
    }

    void carry(List<String> lines) {
      Answer answer = server.apply(lines);
      if (answer instanceof Answer.Stored) {
        stored += lines.size();
      } else if (answer instanceof Answer.Away now) {
        away = now;
      } else if (answer instanceof Answer.Refused why) {
        boolean all = lines.size() == 1 || why.dropped().orElse(-1) == lines.size();
        if (all) {
          refuse(lines, why.reason());
        } else {
          halve(lines);
        }
      } else if (answer instanceof Answer.TooLarge why) {
        if (lines.size() == 1) {
          refuse(lines, why.reason());
        } else {
          halve(lines);
        }
      }
    }

    private void refuse(List<String> lines, String reason) {
      if (reason.contains(TOO_OLD)) {
        tooOld += lines.size();
      } else {
        lines.forEach(line -> refused.add(new Parked(0, line, reason)));
      }
    }

    private void halve(List<String> lines) {
      int middle = lines.size() / 2;
      carry(lines.subList(0, middle));
      if (away == null) {
        carry(lines.subList(middle, lines.size()));
      }
    }
  }
}

package coatwright.replay;

import coatwright.outlook.Outlook;
import coatwright.review.Why;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What a record says when it is run again. Component names are the JSON keys of the contract.
 *
 * @param review the case of every coat for which something was seen
 */
public record Replayed(
    Readings readings, List<CoatAnswer> coats, List<Said> warnings, List<Why> review) {
  public Replayed {
    coats = List.copyOf(coats);
    warnings = List.copyOf(warnings);
    review = List.copyOf(review);
  }

  /**
   * What became of the record's lines.
   *
   * @param count lines that hold data
   * @param accepted lines of which something was believed
   * @param refused what was not believed, held-back values too; a line of which one field was
   *     believed and another not is accepted and stands here as well
   * @param gaps stretches without a believed reading
   */
  public record Readings(int count, int accepted, List<Refused> refused, List<Gap> gaps) {
    public Readings {
      refused = List.copyOf(refused);
      gaps = List.copyOf(gaps);
    }
  }

  /**
   * A line that was not believed, or not whole.
   *
   * @param line in the file, from 1
   */
  public record Refused(int line, String reason) {}

  /** A stretch without a believed reading. */
  public record Gap(Instant from, Instant to) {}

  /**
   * One coat.
   *
   * @param outlook as it stood when the coat went on
   * @param milestones as they stand at the record's end, in the air that really came
   */
  public record CoatAnswer(
      String id, String part, Instant start, Outlook outlook, List<Milestone> milestones) {
    public CoatAnswer {
      milestones = List.copyOf(milestones);
    }
  }

  /** A milestone of a coat; an absent time is not reached in the time looked ahead. */
  public record Milestone(
      String name, Optional<Instant> p10, Optional<Instant> p50, Optional<Instant> p90) {}

  /** A warning; without {@code to} it still stood at the record's end. */
  public record Said(String kind, Instant from, Optional<Instant> to, String message) {}
}

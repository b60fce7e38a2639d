package coatwright.sensors;

import coatwright.sensors.Neighbours.Neighbour;
import com.fasterxml.jackson.databind.JsonNode;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What a recording tells of the time before it, so that a single input can be judged as it would
 * have been in the running house. Phrases understood:
 *
 * <ul>
 *   <li>{@code 60 s earlier 15.0}, {@code 10 s before 20.4/48.2}, {@code 5 min earlier humidity
 *       46.0}, {@code previous 99.4}: what the same sensor said;
 *   <li>{@code 10 s after 20.4/48.3}: what it said next, which tells a spike from a change;
 *   <li>{@code climbed from 88 to 99.6 in 3 h}: how it came there;
 *   <li>{@code 99.9 for 14 h}, {@code same pair for 5 h}, {@code same pair 300 times in 25 h}: how
 *       long it has said so;
 *   <li>{@code neighbour 22.3 C 42.0 %}, {@code second sensor same room 71 %}, {@code sensor B 48,
 *       sensor C 50}: what others in the room say;
 *   <li>{@code identical payload 4 s earlier}, {@code 239 earlier messages within 50 ms}, {@code
 *       newest stored 2026-03-14T09:29:00Z}, {@code header a,b,c}, {@code port opened 0.1 s ago}.
 * </ul>
 *
 * Anything else is passed over: it is there for the reader.
 */
final class ToldBefore {
  private static final Logger LOG = LoggerFactory.getLogger(ToldBefore.class);
  private static final String NUMBER = "([+-]?\\d+(?:\\.\\d+)?)";
  private static final String SPAN = "(\\d+(?:\\.\\d+)?) ?(ms|s|sec|min|h|d|days?)";
  private static final Pattern EARLIER =
      Pattern.compile(
          "^"
              + SPAN
              + " (?:earlier|before|ago)[: ]+(?:(humidity|rh|temperature|t) )?"
              + NUMBER
              + "(?: ?/ ?"
              + NUMBER
              + ")?(?: ?(?:%|C|K))?$",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern PREVIOUS =
      Pattern.compile(
          "^previous (?:(humidity|rh|temperature|t) )?" + NUMBER + "(?: ?/ ?" + NUMBER + ")?.*$",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern AFTER =
      Pattern.compile(
          "^"
              + SPAN
              + " (?:later|after)[: ]+(?:(humidity|rh|temperature|t) )?"
              + NUMBER
              + "(?: ?/ ?"
              + NUMBER
              + ")?(?: ?(?:%|C|K))?$",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern CLIMBED =
      Pattern.compile(
          "^(?:climbed|climbing|rose|rising) from "
              + NUMBER
              + " ?%?(?: to "
              + NUMBER
              + " ?%?)? (?:in|over|within) "
              + SPAN
              + "$");
  private static final Pattern LASTING =
      Pattern.compile("^" + NUMBER + "(?: ?%)? for " + SPAN + "$");
  private static final Pattern SAME_PAIR =
      Pattern.compile("^same (?:pair|values?)(?: \\d+ times)? (?:for|in) " + SPAN + "$");
  private static final Pattern IDENTICAL = Pattern.compile("^identical payload " + SPAN + " .*$");
  private static final Pattern BURST =
      Pattern.compile("^(\\d+) earlier messages within " + SPAN + "$");
  private static final Pattern NEWEST = Pattern.compile("^newest stored (\\S+)$");
  private static final Pattern HEADER = Pattern.compile("^header (?:was )?(.+)$");
  private static final Pattern OPENED = Pattern.compile("^port opened " + SPAN + " ago$");
  private static final Pattern OTHERS =
      Pattern.compile("(?i).*(neighbour|second sensor|other sensor|sensor [A-Z]\\b).*");
  private static final Pattern OTHER_VALUE =
      Pattern.compile("(?<![\\w.])" + NUMBER + " ?(C\\b|%)?(?:[ ,;/]+" + NUMBER + " ?%)?");
  private static final Duration USUAL = Duration.ofMinutes(1);
  private static final Duration SETTLING = Duration.ofSeconds(1);
  private static final String ROOM = "recorded";

  private final List<String> phrases = new ArrayList<>();
  private final Instant now;

  ToldBefore(JsonNode context, Instant now) {
    if (context.isTextual()) {
      phrases.add(context.textValue());
    }
    context.forEach(phrase -> phrases.add(phrase.asText()));
    this.now = now;
  }

  /** The mapping, stood in a room of its own where it names none, so that it has neighbours. */
  SourceMapping withRoom(SourceMapping mapping) {
    if (mapping.placing().room().isPresent()) {
      return mapping;
    }
    var placing = mapping.placing();
    return new SourceMapping(
        mapping.source(),
        mapping.transport(),
        new SourceMapping.Placing(
            placing.role(), Optional.of(ROOM), placing.part(), placing.chip()),
        mapping.payload(),
        mapping.every(),
        mapping.everyGiven(),
        mapping.limits(),
        mapping.resolution(),
        mapping.corrections());
  }

  boolean partialFirstLine() {
    return phrases.stream()
        .map(OPENED::matcher)
        .filter(Matcher::matches)
        .anyMatch(m -> span(m, 1).compareTo(SETTLING) < 0);
  }

  /** Brings the intake to where it would have been. */
  void tell(Intake intake, Neighbours neighbours, RawReading raw) {
    String room = intake.mapping().placing().room().orElse(ROOM);
    for (String phrase : phrases) {
      boolean understood =
          on(EARLIER, phrase, match -> recallAt(intake, match, 3, now.minus(span(match, 1))))
              || on(PREVIOUS, phrase, match -> recallAt(intake, match, 1, now.minus(USUAL)))
              || on(AFTER, phrase, match -> recallAfter(intake, match))
              || on(CLIMBED, phrase, match -> climbed(intake, match))
              || on(LASTING, phrase, match -> lasting(intake, match))
              || on(SAME_PAIR, phrase, match -> intake.recallSame(raw, now.minus(span(match, 1))))
              || on(IDENTICAL, phrase, match -> intake.recallSame(raw, now.minus(span(match, 1))))
              || on(BURST, phrase, match -> intake.recallBurst(raw, count(match)))
              || on(NEWEST, phrase, match -> instant(match).ifPresent(intake::recallNewest))
              || on(HEADER, phrase, match -> intake.overhear(header(raw, match)))
              || on(OTHERS, phrase, match -> others(phrase, room, neighbours));
      LOG.debug("{}: {}", phrase, understood ? "understood" : "for the reader only");
    }
  }

  private static boolean on(Pattern pattern, String phrase, Consumer<Matcher> then) {
    Matcher match = pattern.matcher(phrase);
    if (match.matches()) {
      then.accept(match);
      return true;
    }
    return false;
  }

  /** The groups are the quantity's word, the first value, the second. */
  private static void recallAt(Intake intake, Matcher match, int group, Instant at) {
    intake.recall(
        new Recalled(
            Optional.ofNullable(match.group(group)),
            number(match, group + 1),
            number(match, group + 2),
            at));
  }

  private void recallAfter(Intake intake, Matcher match) {
    intake.recallAfter(
        new Recalled(
            Optional.ofNullable(match.group(3)),
            number(match, 4),
            number(match, 5),
            now.plus(span(match, 1))));
  }

  /** What it stood at when it began to climb, and a moment ago. */
  private void climbed(Intake intake, Matcher match) {
    Recalled foot =
        new Recalled(
            Optional.of("rh"), number(match, 1), OptionalDouble.empty(), now.minus(span(match, 3)));
    intake.recall(foot);
    OptionalDouble top = number(match, 2);
    if (top.isPresent()) {
      intake.recall(new Recalled(Optional.of("rh"), top, OptionalDouble.empty(), now.minus(USUAL)));
    }
  }

  private void lasting(Intake intake, Matcher match) {
    Recalled then =
        new Recalled(
            Optional.empty(), number(match, 1), OptionalDouble.empty(), now.minus(span(match, 2)));
    intake.recall(then);
    intake.recall(then.at(now.minus(USUAL)));
  }

  private RawReading header(RawReading raw, Matcher match) {
    return new RawReading(raw.channel(), match.group(1), now, raw.way());
  }

  /** A count with more digits than any flood is as good as the most. */
  private static int count(Matcher match) {
    String digits = match.group(1);
    return digits.length() > 6 ? 1_000_000 : Integer.parseInt(digits);
  }

  private void others(String phrase, String room, Neighbours neighbours) {
    Matcher value = OTHER_VALUE.matcher(phrase);
    int count = 0;
    while (value.find()) {
      boolean celsius = "C".equals(value.group(2));
      OptionalDouble t = celsius ? number(value, 1) : OptionalDouble.empty();
      OptionalDouble rh = celsius ? number(value, 3) : number(value, 1);
      count++;
      if (rh.isPresent()) {
        neighbours.note(room, "other " + count, new Neighbour(t, rh.getAsDouble(), now));
      }
    }
  }

  private static OptionalDouble number(Matcher match, int group) {
    String text = match.group(group);
    return text == null ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(text));
  }

  private static Duration span(Matcher match, int group) {
    double size = Double.parseDouble(match.group(group));
    double millis =
        switch (match.group(group + 1)) {
          case "ms" -> 1;
          case "s", "sec" -> 1_000;
          case "min" -> 60_000;
          case "h" -> 3_600_000;
          default -> 86_400_000;
        };
    return Duration.ofMillis(Math.round(size * millis));
  }

  private static Optional<Instant> instant(Matcher match) {
    try {
      return Optional.of(Instant.parse(match.group(1)));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }
}

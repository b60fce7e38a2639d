package coatwright.sensors;

import coatwright.sensors.Neighbours.Neighbour;
import coatwright.sensors.Phrase.Told;
import coatwright.sensors.modbus.ModbusRtu;
import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What a recording tells of the time before it, so that a single input can be judged as it would
 * have been in the running house. Phrases understood, in these and like words:
 *
 * <ul>
 *   <li>{@code 60 s earlier 15.0}, {@code 10 s before 20.4/48.2}, {@code 5 min earlier humidity
 *       46.0}, {@code previous 99.4}: what the same sensor said;
 *   <li>{@code 10 s after 20.4/48.3}, {@code next 20.4/48.3}: what it said next, which tells a
 *       spike from a change;
 *   <li>{@code climbed from 88 to 99.6 in 3 h}: how it came there;
 *   <li>{@code 99.9 for 14 h}, {@code 51.7 for 3 h while temperature moved 4 K}, {@code same pair
 *       for 5 h}, {@code same pair 300 times in 25 h}: how long it has said so;
 *   <li>{@code neighbour 22.3 C 42.0 %}, {@code second sensor same room 71 %}, {@code sensor B 48,
 *       sensor C 50}: what others in the room say;
 *   <li>{@code identical payload 4 s earlier}, {@code seq 4711 stored before}, {@code 239 earlier
 *       messages within 50 ms}, {@code newest stored 2026-03-14T09:29:00Z}, {@code header a,b,c},
 *       {@code port opened 0.1 s ago}, {@code request 01 04 00 01 00 02 20 0b}.
 * </ul>
 *
 * Anything else is passed over: it is there for the reader.
 */
final class ToldBefore {
  private static final Logger LOG = LoggerFactory.getLogger(ToldBefore.class);
  private static final Duration USUAL = Duration.ofMinutes(1);
  private static final Duration SETTLING = Duration.ofSeconds(1);
  private static final String ROOM = "recorded";

  private final List<Told> told = new ArrayList<>();
  private final Instant now;

  ToldBefore(JsonNode context, Instant now) {
    List<String> phrases = new ArrayList<>();
    if (context.isTextual()) {
      phrases.add(context.textValue());
    }
    context.forEach(phrase -> phrases.add(phrase.asText()));
    for (String phrase : phrases) {
      Optional<Told> read = Phrase.read(phrase);
      LOG.debug("{}: {}", phrase, read);
      read.ifPresent(told::add);
    }
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
    return told.stream()
        .anyMatch(
            each -> each instanceof Told.Opened opened && opened.ago().compareTo(SETTLING) < 0);
  }

  /** Brings the intake to where it would have been. */
  void tell(Intake intake, Neighbours neighbours, RawReading raw) {
    String room = intake.mapping().placing().room().orElse(ROOM);
    for (Told each : told) {
      if (each instanceof Told.Own own) {
        own(intake, own);
      } else if (each instanceof Told.Climbed climbed) {
        climbed(intake, climbed);
      } else if (each instanceof Told.Lasting lasting) {
        lasting(intake, lasting);
      } else if (each instanceof Told.Same same) {
        intake.recallSame(raw, now.minus(same.ago()));
      } else if (each instanceof Told.Numbered numbered) {
        if (Pattern.compile("(?<!\\d)" + numbered.number() + "(?!\\d)")
            .matcher(raw.octets())
            .find()) {
          intake.recallSame(raw, now.minus(USUAL));
        }
      } else if (each instanceof Told.Burst burst) {
        intake.recallBurst(burst.count());
      } else if (each instanceof Told.Newest newest) {
        intake.recallNewest(newest.at());
      } else if (each instanceof Told.Header header) {
        intake.overhear(new RawReading(raw.channel(), header.line(), now, raw.way()), false);
      } else if (each instanceof Told.Others others) {
        others(others, room, neighbours);
      } else if (each instanceof Told.Request request) {
        ModbusRtu.requestIn(Chunks.ofBytes(request.bytes())).ifPresent(intake::asked);
      }
    }
  }

  private void own(Intake intake, Told.Own own) {
    Recalled recalled = new Recalled(own.what(), own.first(), own.second(), now.plus(own.offset()));
    if (own.offset().isNegative()) {
      intake.recall(recalled);
    } else {
      intake.recallAfter(recalled);
    }
  }

  /** What it stood at when it began to climb, and a moment ago. */
  private void climbed(Intake intake, Told.Climbed climbed) {
    intake.recall(humidity(OptionalDouble.of(climbed.footPct()), now.minus(climbed.over())));
    if (climbed.topPct().isPresent()) {
      intake.recall(humidity(climbed.topPct(), now.minus(USUAL)));
    }
  }

  private static Recalled humidity(OptionalDouble rhPct, Instant at) {
    return new Recalled(Optional.of("rh"), rhPct, OptionalDouble.empty(), at);
  }

  private void lasting(Intake intake, Told.Lasting lasting) {
    Recalled then =
        new Recalled(
            lasting.what(),
            OptionalDouble.of(lasting.first()),
            lasting.second(),
            now.minus(lasting.span()));
    intake.recall(then);
    intake.recall(then.at(now.minus(USUAL)));
    lasting.movedK().ifPresent(moved -> intake.recallMoved(moved, now.minus(lasting.span())));
  }

  private void others(Told.Others others, String room, Neighbours neighbours) {
    int count = 0;
    for (Phrase.Other other : others.each()) {
      count++;
      neighbours.note(room, "other " + count, new Neighbour(other.t(), other.rh(), now));
    }
  }
}

package coatwright.sensors;

import coatwright.climate.RawText;
import coatwright.sensors.mqtt.MqttListener;
import coatwright.sensors.mqtt.TopicFilter;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ScheduledExecutorService;
import java.util.function.LongSupplier;

/** Takes a broker's messages to the sources that asked for their topics. */
final class Postman implements MqttListener {
  private final List<Source> sources;
  private final Inbox inbox;
  private final Acknowledger acknowledger;
  private final Porch porch;
  private final Clock clock;
  private final LongSupplier nanos;
  private final Runnable onChange;

  /**
   * What all links of the house share.
   *
   * @param turns on which messages wait a moment
   */
  record House(
      Inbox inbox,
      Acknowledger acknowledger,
      ScheduledExecutorService turns,
      Clock clock,
      LongSupplier nanos,
      Runnable onChange) {}

  Postman(List<Source> sources, House house) {
    this.sources = List.copyOf(sources);
    this.inbox = house.inbox();
    this.acknowledger = house.acknowledger();
    this.clock = house.clock();
    this.nanos = house.nanos();
    this.onChange = house.onChange();
    this.porch = new Porch(house.turns(), nanos, this::deliver);
  }

  List<String> filters() {
    List<String> filters = new ArrayList<>();
    for (Source source : sources) {
      Transport.Mqtt mqtt = mqtt(source);
      filters.addAll(mqtt.filters());
      mqtt.presence().ifPresent(presence -> filters.add(presence.filter()));
    }
    return filters;
  }

  private static Transport.Mqtt mqtt(Source source) {
    return (Transport.Mqtt) source.mapping().transport().orElseThrow();
  }

  @Override
  public void connecting() {
    porch.open();
  }

  @Override
  public void message(String topic, byte[] bytes, boolean retained) {
    RawReading raw =
        RawReading.of(
            topic,
            bytes,
            clock.instant(),
            retained ? RawReading.Way.RETAINED : RawReading.Way.MESSAGE);
    for (Source source : sources) {
      Transport.Mqtt mqtt = mqtt(source);
      Optional<Transport.Presence> presence =
          mqtt.presence().filter(each -> TopicFilter.matches(each.filter(), topic));
      if (presence.isPresent()) {
        String word = new String(bytes, StandardCharsets.UTF_8).strip();
        presence
            .get()
            .says(word)
            .ifPresent(there -> source.watch().present(there, retained, nanos.getAsLong()));
        onChange.run();
      } else if (mqtt.filters().stream().anyMatch(each -> TopicFilter.matches(each, topic))) {
        enter(source, mqtt, raw);
      }
    }
  }

  private void enter(Source source, Transport.Mqtt mqtt, RawReading raw) {
    boolean kept = raw.way() == RawReading.Way.RETAINED;
    if (kept && mqtt.retained() == Transport.Retained.IGNORE) {
      return;
    }
    // Several sensors of one topic may well speak at once; each is looked at by itself later.
    boolean mayBeLate =
        !kept && !source.mapping().timedByItsPayload() && !source.mapping().manyOnOneTopic();
    if (!(mayBeLate && porch.waits(source, raw))) {
      deliver(source, raw);
    }
  }

  private void deliver(Source source, RawReading raw) {
    inbox.put(() -> source.read(raw), () -> source.watch().droppedUnread(nanos.getAsLong()));
  }

  @Override
  public void message(String topic, byte[] bytes, boolean retained, Runnable stored) {
    message(topic, bytes, retained);
    // Behind what was just put there: when its turn comes, all of it has gone to the store.
    inbox.put(() -> acknowledger.handed(stored), stored);
  }

  @Override
  public void tooLong(String topic, int bytes) {
    for (Source source : sources) {
      if (mqtt(source).filters().stream().anyMatch(each -> TopicFilter.matches(each, topic))) {
        source
            .watch()
            .refusedUnread(
                new RawText(
                    source.mapping().source(),
                    topic,
                    clock.instant(),
                    "(%d bytes or more)".formatted(bytes),
                    "refused",
                    Optional.of(
                        "message of %d bytes or more is too long to be a reading"
                            .formatted(bytes))));
      }
    }
  }

  @Override
  public void changed() {
    onChange.run();
  }
}

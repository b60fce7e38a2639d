package coatwright.sensors;

import coatwright.climate.RawText;
import coatwright.sensors.mqtt.MqttListener;
import coatwright.sensors.mqtt.TopicFilter;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Takes a broker's messages to the sources that asked for their topics. */
final class Postman implements MqttListener {
  private final List<Source> sources;
  private final Inbox inbox;
  private final Clock clock;
  private final Runnable onChange;

  Postman(List<Source> sources, Inbox inbox, Clock clock, Runnable onChange) {
    this.sources = List.copyOf(sources);
    this.inbox = inbox;
    this.clock = clock;
    this.onChange = onChange;
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
        presence.get().says(word).ifPresent(there -> source.watch().present(there));
        onChange.run();
      } else if (mqtt.filters().stream().anyMatch(each -> TopicFilter.matches(each, topic))) {
        inbox.put(() -> source.read(raw));
      }
    }
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
                    "(%d bytes)".formatted(bytes),
                    "refused",
                    Optional.of(
                        "message of %d bytes is too long to be a reading".formatted(bytes))));
      }
    }
  }

  @Override
  public void changed() {
    onChange.run();
  }
}

package coatwright.sensors;

import coatwright.climate.RawText;
import coatwright.sensors.serial.LineAssembler;
import coatwright.sensors.serial.SerialListener;
import java.time.Clock;
import java.util.Optional;

/** Takes a serial device's lines to its source. */
final class LineReader implements SerialListener {
  private final Source source;
  private final String device;
  private final Inbox inbox;
  private final Clock clock;
  private final Runnable onChange;

  LineReader(Source source, String device, Inbox inbox, Clock clock, Runnable onChange) {
    this.source = source;
    this.device = device;
    this.inbox = inbox;
    this.clock = clock;
    this.onChange = onChange;
  }

  @Override
  public void line(String octets, boolean settling) {
    RawReading raw = new RawReading(device, octets, clock.instant(), RawReading.Way.LINE);
    inbox.put(settling ? () -> source.overhear(raw, false) : () -> source.read(raw));
  }

  @Override
  public void firstLine(String octets) {
    RawReading raw = new RawReading(device, octets, clock.instant(), RawReading.Way.LINE);
    inbox.put(() -> source.overhear(raw, true));
  }

  @Override
  public void overlong() {
    source
        .watch()
        .refusedUnread(
            new RawText(
                source.mapping().source(),
                device,
                clock.instant(),
                "",
                "refused",
                Optional.of(
                    "line longer than %d bytes: no line end for a long time; wrong speed?"
                        .formatted(LineAssembler.LONGEST))));
  }

  @Override
  public void changed() {
    onChange.run();
  }
}

package coatwright;

import coatwright.climate.Reading;
import coatwright.demo.InventedEntry;
import coatwright.demo.InventedShop;
import coatwright.journal.Forms;
import coatwright.sensors.Intake;
import coatwright.sensors.RawReading;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.Iterator;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;

/**
 * Writes the invented shop's past through the walk a real shop's present takes: every payload by
 * mapping, screen and calibration into the climate, every entry by the forms, each at its hour.
 */
final class HistoryWriter {
  private final Shop shop;
  private final InventedShop invented;
  private final Payloads payloads;
  private final PastClock pastClock = new PastClock();

  /** The way of a payload into the house. */
  interface Payloads {
    void take(InventedShop.Payload payload, Consumer<Reading> believed);
  }

  HistoryWriter(Shop shop, InventedShop invented, Payloads payloads) {
    this.shop = shop;
    this.invented = invented;
    this.payloads = payloads;
  }

  /** The way by the mappings of the settings; keeps the texts a running house would still have. */
  static Payloads mapped(Shop shop, Instant keepTextsFrom) {
    Map<String, Intake> intakes = new HashMap<>();
    shop.settings()
        .sources()
        .forEach(mapping -> intakes.put(mapping.source(), Intake.alone(mapping)));
    return (payload, believed) -> {
      Intake intake = Objects.requireNonNull(intakes.get(payload.source()), payload.source());
      Intake.Taken taken =
          intake.take(
              RawReading.of(
                  payload.topic(),
                  payload.text().getBytes(StandardCharsets.UTF_8),
                  payload.at(),
                  RawReading.Way.MESSAGE));
      if (taken.readings().isEmpty() || payload.at().isAfter(keepTextsFrom)) {
        shop.store().readings().keep(taken.raw());
      }
      taken.readings().forEach(believed);
    };
  }

  /** Writes all that happened before the instant. */
  void write(Instant until) {
    Forms forms = shop.forms(pastClock);
    Iterator<InventedEntry> entries = invented.entries().iterator();
    InventedEntry[] next = {entries.hasNext() ? entries.next() : null};
    invented.payloads(
        invented.start(),
        until,
        payload -> {
          while (next[0] != null && !next[0].at().isAfter(payload.at())) {
            write(forms, next[0]);
            next[0] = entries.hasNext() ? entries.next() : null;
          }
          payloads.take(payload, shop.climate()::accept);
        });
    while (next[0] != null) {
      write(forms, next[0]);
      next[0] = entries.hasNext() ? entries.next() : null;
    }
  }

  private void write(Forms forms, InventedEntry entry) {
    pastClock.now = entry.at();
    switch (entry.kind()) {
      case "piece" -> forms.piece(entry.form());
      case "part" -> forms.part(entry.form());
      case "jar" -> forms.jar(entry.form());
      case "coat" -> forms.coat(entry.form());
      case "note" -> forms.note(entry.form());
      default -> throw new IllegalStateException("no form for " + entry.kind());
    }
  }

  /** Stands where the history stands. */
  private static final class PastClock extends Clock {
    private volatile Instant now = Instant.EPOCH;

    @Override
    public Instant instant() {
      return now;
    }

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }
  }
}

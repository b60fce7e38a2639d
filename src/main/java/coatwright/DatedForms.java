package coatwright;

import coatwright.climate.Happening;
import coatwright.climate.HouseLog;
import coatwright.journal.Entry;
import coatwright.journal.Forms;
import coatwright.journal.ShopTime;
import coatwright.quantity.Fault;
import coatwright.quantity.RefusedInput;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * The forms of a house whose clock may not be to trust. While it is not, every entry must say its
 * date in full, which then stands for "now"; and the house notes that it was so.
 */
final class DatedForms implements Forms {
  private static final List<String> TIMES = List.of("start", "end", "at");

  private final Function<Clock, Forms> forms;
  private final Forms usual;
  private final Supplier<Optional<String>> clockTrouble;
  private final HouseLog log;
  private final Clock clock;
  private final ZoneId zone;

  /**
   * @param forms by a clock
   * @param clockTrouble why the machine's clock is not to be trusted, while it is not
   */
  DatedForms(
      Function<Clock, Forms> forms,
      Supplier<Optional<String>> clockTrouble,
      HouseLog log,
      Clock clock,
      ZoneId zone) {
    this.forms = forms;
    this.usual = forms.apply(clock);
    this.clockTrouble = clockTrouble;
    this.log = log;
    this.clock = clock;
    this.zone = zone;
  }

  @Override
  public List<Entry> piece(Map<String, String> form) {
    return dated(form, "at", Forms::piece);
  }

  @Override
  public List<Entry> part(Map<String, String> form) {
    return dated(form, "at", Forms::part);
  }

  @Override
  public List<Entry> jar(Map<String, String> form) {
    return dated(form, "at", Forms::jar);
  }

  @Override
  public List<Entry> coat(Map<String, String> form) {
    return dated(form, "start", Forms::coat);
  }

  @Override
  public List<Entry> note(Map<String, String> form) {
    return dated(form, "at", Forms::note);
  }

  @Override
  public List<Entry> strike(Map<String, String> form) {
    return usual.strike(form);
  }

  private List<Entry> dated(
      Map<String, String> form,
      String needed,
      BiFunction<Forms, Map<String, String>, List<Entry>> write) {
    Optional<String> trouble = clockTrouble.get();
    if (trouble.isEmpty()) {
      return write.apply(usual, form);
    }
    Instant said = latestSaid(form, needed, trouble.get());
    List<Entry> entries =
        write.apply(forms.apply(Clock.fixed(said.plus(Duration.ofSeconds(1)), zone)), form);
    for (Entry entry : entries) {
      log.happened(
          new Happening(
              clock.instant(),
              "clock",
              "entry %s was written while the machine's clock was not to be trusted; its date is the one typed with it"
                  .formatted(entry.id())));
    }
    return entries;
  }

  private Instant latestSaid(Map<String, String> form, String needed, String trouble) {
    List<Fault> faults = new ArrayList<>();
    Instant latest = Instant.MIN;
    if (form.getOrDefault(needed, "").isBlank()) {
      faults.add(Fault.of(needed, "is needed now: " + trouble, "write it like 2026-03-14T16:20"));
    }
    for (String key : TIMES) {
      String typed = form.getOrDefault(key, "").strip();
      if (!typed.isEmpty() && !typed.matches("\\d{4}-\\d\\d-\\d\\d[T ].*")) {
        faults.add(
            Fault.of(
                key + " \"" + typed + "\"",
                "needs its day and year now: " + trouble,
                "write it like 2026-03-14T16:20"));
      } else if (!typed.isEmpty()) {
        try {
          Instant at = new ShopTime(clock, zone).instant(key, typed);
          latest = at.isAfter(latest) ? at : latest;
        } catch (DateTimeException outOfReach) {
          faults.add(
              Fault.of(key + " \"" + typed + "\"", "is no date", "write it like 2026-03-14T16:20"));
        }
      }
    }
    if (!faults.isEmpty()) {
      throw new RefusedInput(faults);
    }
    return latest;
  }
}

package coatwright.sensors;

import coatwright.climate.Doubt;
import coatwright.climate.RawText;
import coatwright.climate.Reading;
import coatwright.sensors.MappedPayload.HeldBack;
import coatwright.sensors.MappedPayload.Refused;
import coatwright.sensors.MappedPayload.Values;
import coatwright.sensors.modbus.ModbusRequest;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The path of one source's payloads: text, mapping, screen, calibration. Remembers what each of its
 * sensors said. Not safe for several threads.
 */
public final class Intake {
  private static final int MOST_SENSORS = 256;

  private final SourceMapping mapping;
  private final PayloadForm form;
  private final SampleReader reader;
  private final Deliveries deliveries;
  private final Misread misread;
  private final Calibration calibration;
  private final Screen screen;
  private final Map<String, History> histories = new HashMap<>();
  private final List<Recalled> recalled = new ArrayList<>();
  private final List<Recalled> after = new ArrayList<>();
  private OptionalDouble movedK = OptionalDouble.empty();
  private Instant movedSince = Instant.EPOCH;

  Intake(SourceMapping mapping, Neighbours neighbours) {
    this(mapping, neighbours, Upkeep.NONE);
  }

  Intake(SourceMapping mapping, Neighbours neighbours, Upkeep upkeep) {
    this.mapping = mapping;
    this.form = PayloadForm.of(mapping.payload());
    this.reader = new SampleReader(mapping);
    this.deliveries = new Deliveries(mapping);
    this.calibration = new Calibration(mapping, upkeep);
    this.screen = new Screen(mapping, neighbours, calibration);
    this.misread = new Misread(mapping, reader);
  }

  /** One source by itself, with no neighbours to compare. */
  public static Intake alone(SourceMapping mapping) {
    return new Intake(mapping, new Neighbours());
  }

  /** The same, with what the shop's books say of it. */
  public static Intake alone(SourceMapping mapping, Upkeep upkeep) {
    return new Intake(mapping, new Neighbours(), upkeep);
  }

  /**
   * What became of a payload.
   *
   * @param bySensor the verdict apart, one for each record of the payload; the one verdict where it
   *     holds no more than one
   * @param readings what is believed, as the house keeps it; with a step that is borne out, the one
   *     held back before it comes first
   * @param doubts steps that wait for the next to agree
   * @param raw its text and verdict, as the house keeps it
   * @param harmless nothing was read and nothing is wrong: a header line, another device, a message
   *     delivered twice
   * @param present what it said about the node being there, if that is what it said
   * @param sent the humidities in it as they came, before limits and corrections
   */
  public record Taken(
      MappedPayload verdict,
      List<MappedPayload> bySensor,
      List<Reading> readings,
      List<Doubt> doubts,
      RawText raw,
      boolean harmless,
      Optional<Boolean> present,
      List<JustSent> sent) {
    public Taken {
      bySensor = List.copyOf(bySensor);
      sent = List.copyOf(sent);
      readings = List.copyOf(readings);
      doubts = List.copyOf(doubts);
    }
  }

  /** Reads a payload; never throws for what a sender may send. */
  public Taken take(RawReading raw) {
    PayloadText text = text(raw);
    PayloadKind kind = mapping.payload().kind();
    if (text.text().isEmpty() || (!kind.binary() && text.trimmed().isEmpty())) {
      return refused(raw, "empty payload", true, Optional.empty());
    }
    Optional<String> word =
        kind.binary() || kind == PayloadKind.WORD ? Optional.empty() : Missing.word(text.trimmed());
    if (word.isPresent()) {
      Optional<Boolean> present =
          Missing.saysAbsent(text.trimmed()) ? Optional.of(false) : Optional.empty();
      return refused(raw, word.get(), false, present);
    }
    Opened opened = form.open(text);
    if (opened instanceof Opened.No no) {
      return refused(raw, no.reason(), no.harmless(), no.present());
    }
    return judged(raw, text, (Opened.Parts) opened);
  }

  private PayloadText text(RawReading raw) {
    return mapping.payload().kind().binary()
        ? new PayloadText(raw.octets(), false, false)
        : PayloadText.of(raw, mapping.payload().charset());
  }

  /** A recording tells what was asked of a unit. */
  void asked(ModbusRequest request) {
    form.asked(request);
  }

  /**
   * Looks at a line said while a serial source settles, from which only a header is learned.
   *
   * @param maybeCut its beginning may be missing
   */
  void overhear(RawReading raw, boolean maybeCut) {
    form.overhear(text(raw), maybeCut);
  }

  SourceMapping mapping() {
    return mapping;
  }

  /** How its sensors' humidity stands. Safe for several threads. */
  Calibration calibration() {
    return calibration;
  }

  private Taken judged(RawReading raw, PayloadText text, Opened.Parts parts) {
    List<Sample> samples = new ArrayList<>();
    for (Cells cells : parts.cells()) {
      reader.read(cells, raw).ifPresent(samples::add);
    }
    if (samples.isEmpty()) {
      return refused(
          raw,
          "no mapped member present: another device, or other names than the mapping has",
          true,
          Optional.empty());
    }
    Map<String, Deliveries.Look> looks = new HashMap<>();
    List<Values> accepted = new ArrayList<>();
    List<HeldBack> held = new ArrayList<>();
    List<Refused> refused = new ArrayList<>();
    List<Reading> readings = new ArrayList<>();
    List<Doubt> doubts = new ArrayList<>();
    List<MappedPayload> bySensor = new ArrayList<>();
    List<JustSent> sent = new ArrayList<>();
    for (Sample sample : samples) {
      parts.flags().forEach(sample::flag);
      justSent(sample).ifPresent(sent::add);
      // Several values of one sensor in one payload came once.
      judge(
          sample,
          raw,
          text,
          parts,
          looks.computeIfAbsent(sample.key, k -> deliveries.look(raw, k)));
      sample.accepted().ifPresent(accepted::add);
      sample.heldBack().ifPresent(held::add);
      refused.addAll(sample.refused());
      bySensor.add(
          new MappedPayload(
              mapping.source(),
              sample.accepted().stream().toList(),
              sample.heldBack().stream().toList(),
              sample.refused()));
      if (!sample.isHeld() && sample.hasReading()) {
        sample.confirmed().forEach(earlier -> readings.add(corrected(earlier)));
        readings.add(calibration.reading(sample));
      } else if (sample.isDoubted()) {
        doubts.add(new Doubt(corrected(sample), sample.heldBecause().orElseThrow()));
      }
    }
    MappedPayload verdict = new MappedPayload(mapping.source(), accepted, held, refused);
    boolean repeated = samples.stream().allMatch(Sample::isRepeated);
    return new Taken(
        verdict, bySensor, readings, doubts, raw(raw, verdict), repeated, Optional.empty(), sent);
  }

  private Optional<JustSent> justSent(Sample sample) {
    return sample.has(Quantity.RELATIVE_HUMIDITY)
        ? Optional.of(
            new JustSent(
                calibration.name(sample),
                sample.at,
                sample.value(Quantity.AIR_TEMPERATURE),
                sample.value(Quantity.RELATIVE_HUMIDITY).getAsDouble()))
        : Optional.empty();
  }

  /** As the house keeps it; what is compared with the next stays as it was sent. */
  private Reading corrected(Sample sample) {
    Sample copy = sample.copy();
    calibration.correct(copy);
    return calibration.reading(copy);
  }

  private void judge(
      Sample sample, RawReading raw, PayloadText text, Opened.Parts parts, Deliveries.Look look) {
    History history = history(sample);
    if (raw.way() == RawReading.Way.RETAINED) {
      Optional<String> old = deliveries.retained(raw, sample);
      if (old.isPresent()) {
        sample.refuseAll(old.get());
        return;
      }
    }
    Optional<String> still = deliveries.standingStill(sample, history, raw);
    if (still.isPresent()) {
      sample.refuseAll(still.get());
      return;
    }
    Optional<String> duplicate = deliveries.duplicate(sample, history, look);
    if (duplicate.isPresent()) {
      sample.repeated();
      sample.refuseAll(duplicate.get());
      return;
    }
    if (text.nulTrimmed() && mapping.payload().stripNul()) {
      sample.flag("nul_stripped");
    } else if (text.nulTrimmed()) {
      sample.hold("trailing NUL trimmed; set nul: strip if the sender always adds one");
    }
    if (!parts.heldBecause().isEmpty()) {
      sample.hold(parts.heldBecause());
    }
    Optional<Instant> boxed = calibration.boxedSince(sample);
    if (boxed.isPresent()) {
      // What a salt makes is not the room's air, and no history of it either.
      sample.hold("in the box with a salt since %s: kept aside".formatted(boxed.get()));
      return;
    }
    deliveries.hold(sample, look);
    misread.judge(sample, raw, parts.otherwise());
    screen.judge(sample, history);
    boolean believed = !sample.isHeld();
    history.keep(sample, believed);
    if (believed) {
      calibration.correct(sample);
      screen.tell(sample);
    }
  }

  /** A sender that makes up a new identity with every message must not fill the memory. */
  private History history(Sample sample) {
    if (histories.size() >= MOST_SENSORS && !histories.containsKey(sample.key)) {
      histories.clear();
    }
    return histories.computeIfAbsent(sample.key, key -> begun(sample));
  }

  private History begun(Sample sample) {
    History history = new History();
    for (Recalled told : recalled) {
      Sample earlier = Sample.recalled(sample.key, told.at());
      told.into(earlier, sample.values());
      if (movedK.isPresent()
          && told.at().equals(movedSince)
          && sample.has(Quantity.AIR_TEMPERATURE)) {
        double now = sample.value(Quantity.AIR_TEMPERATURE).getAsDouble();
        earlier.put(Quantity.AIR_TEMPERATURE, now - movedK.getAsDouble());
      }
      history.saw(earlier);
      history.keep(earlier, true);
      history.newest(told.at());
    }
    for (Recalled told : after) {
      Sample next = Sample.recalled(sample.key, told.at());
      told.into(next, sample.values());
      StepRules.stays(next, history);
    }
    return history;
  }

  /** Forgets what its sensors said. */
  void forget() {
    histories.clear();
  }

  /** Takes up a sensor where the house left off, before the first payload comes. */
  void resume(Reading last) {
    boolean named = !last.sensor().equals(mapping.source());
    String key = named ? last.sensor() : "";
    Sample sample = Sample.recalled(key, last.at());
    Optional<Reading.Sent> sent = last.sent();
    put(
        sample,
        Quantity.AIR_TEMPERATURE,
        sent.map(Reading.Sent::temperatureC),
        last.temperatureC());
    put(sample, Quantity.RELATIVE_HUMIDITY, sent.map(Reading.Sent::rhPct), last.rhPct());
    put(
        sample,
        Quantity.SURFACE_TEMPERATURE,
        sent.map(Reading.Sent::surfaceTemperatureC),
        last.surfaceTemperatureC());
    if (histories.size() < MOST_SENSORS) {
      histories
          .computeIfAbsent(key, any -> new History())
          .resume(sample, last.flags(), StuckRules.RECOVERY);
    }
  }

  private static void put(
      Sample sample, Quantity quantity, Optional<OptionalDouble> sent, OptionalDouble kept) {
    OptionalDouble value = sent.filter(OptionalDouble::isPresent).orElse(kept);
    if (value.isPresent()) {
      sample.put(quantity, value.getAsDouble());
    }
  }

  /** A recording tells what its sensor said before. */
  void recall(Recalled told) {
    recalled.add(told);
    recalled.sort(Comparator.comparing(Recalled::at));
  }

  /** A recording tells how far the temperature stood from what it is now, in K. */
  void recallMoved(double byK, Instant then) {
    movedK = OptionalDouble.of(byK);
    movedSince = then;
  }

  /** A recording tells what its sensor said next. */
  void recallAfter(Recalled told) {
    after.add(told);
  }

  /** A recording tells that the same payload came before, last at that time. */
  void recallSame(RawReading raw, Instant then) {
    take(new RawReading(raw.channel(), raw.octets(), then, raw.way()));
  }

  /** A recording tells how many messages came just before. */
  void recallBurst(int count) {
    deliveries.recallBurst(Math.min(count, MOST_SENSORS));
  }

  /** A recording tells how new the newest stored reading is. */
  void recallNewest(Instant newest) {
    recalled.add(
        new Recalled(Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty(), newest));
  }

  private Taken refused(
      RawReading raw, String reason, boolean harmless, Optional<Boolean> present) {
    MappedPayload verdict =
        new MappedPayload(
            mapping.source(), List.of(), List.of(), List.of(new Refused(Optional.empty(), reason)));
    return new Taken(
        verdict,
        List.of(verdict),
        List.of(),
        List.of(),
        raw(raw, verdict),
        harmless,
        present,
        List.of());
  }

  private RawText raw(RawReading raw, MappedPayload verdict) {
    return new RawText(
        mapping.source(),
        raw.channel(),
        raw.arrivedAt(),
        mapping.payload().kind().binary()
            ? PayloadText.hexadecimal(raw)
            : PayloadText.forReading(raw),
        verdict.verdict(),
        verdict.reason());
  }
}

package coatwright.sensors;

import coatwright.climate.Doubt;
import coatwright.climate.RawText;
import coatwright.climate.Reading;
import coatwright.climate.SourceStatus;
import coatwright.quantity.Fault;
import coatwright.quantity.RefusedInput;
import coatwright.sensors.modbus.ModbusRequest;
import coatwright.sensors.mqtt.Broker;
import coatwright.sensors.mqtt.LinkManner;
import coatwright.sensors.mqtt.MqttLink;
import coatwright.sensors.serial.Poll;
import coatwright.sensors.serial.PolledLine;
import coatwright.sensors.serial.SerialLink;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import java.util.stream.Collectors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * All the sensors of the house: opens the links, reads what comes on one thread, hands on what is
 * believed, and knows how each source is doing.
 *
 * <p>Starting needs no broker, no device and no right clock; each is tried for ever. Consumers are
 * called on the reading thread, in the order of arrival; what they throw is logged, and the next
 * payload is read.
 */
public final class Sensors implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Sensors.class);
  private static final int INBOX = 20_000;
  private static final int SILENT_INTERVALS = 6;
  private static final Duration ANSWER_WITHIN = Duration.ofSeconds(1);
  private static final Duration REOPEN_EVERY = Duration.ofSeconds(2);

  private final Clock clock;
  private final LongSupplier nanos;
  private final Consumer<Reading> accepted;
  private final Consumer<Doubt> doubted;
  private final Consumer<RawText> raw;
  private final Inbox inbox = new Inbox(INBOX);
  private final Acknowledger acknowledger = new Acknowledger(this::flush);
  private volatile Runnable durable = () -> {};
  private final Map<String, Source> sources = new LinkedHashMap<>();
  private final List<MqttLink> mqttLinks = new ArrayList<>();
  private final List<SerialLink> serialLinks = new ArrayList<>();
  private final List<PolledLine> polledLines = new ArrayList<>();
  private final List<Consumer<SourceStatus>> statusListeners = new CopyOnWriteArrayList<>();
  private final List<Consumer<RawAndVerdict>> rawListeners = new CopyOnWriteArrayList<>();
  private final Map<String, SourceStatus> lastTold = new LinkedHashMap<>();
  private final ScheduledExecutorService teller =
      Executors.newSingleThreadScheduledExecutor(
          task -> {
            Thread thread = new Thread(task, "sensors-status");
            thread.setDaemon(true);
            return thread;
          });

  /**
   * @param brokers by the name the sources use
   * @param accepted takes what is believed
   * @param doubted takes what waits for the next reading to agree
   * @param raw takes every payload's text with its verdict
   * @throws RefusedInput when two sources have one name, or one names a broker that is not there
   */
  public Sensors(
      List<SourceMapping> mappings,
      Map<String, Broker> brokers,
      Clock clock,
      Consumer<Reading> accepted,
      Consumer<Doubt> doubted,
      Consumer<RawText> raw) {
    this(mappings, brokers, clock, accepted, doubted, raw, Upkeep.NONE);
  }

  /**
   * @param upkeep what the shop's books say of the sensors
   */
  public Sensors(
      List<SourceMapping> mappings,
      Map<String, Broker> brokers,
      Clock clock,
      Consumer<Reading> accepted,
      Consumer<Doubt> doubted,
      Consumer<RawText> raw,
      Upkeep upkeep) {
    this(mappings, brokers, clock, accepted, doubted, raw, upkeep, System::nanoTime, REOPEN_EVERY);
  }

  Sensors(
      List<SourceMapping> mappings,
      Map<String, Broker> brokers,
      Clock clock,
      Consumer<Reading> accepted,
      Consumer<Doubt> doubted,
      Consumer<RawText> raw,
      LongSupplier nanos,
      Duration reopenEvery) {
    this(mappings, brokers, clock, accepted, doubted, raw, Upkeep.NONE, nanos, reopenEvery);
  }

  Sensors(
      List<SourceMapping> mappings,
      Map<String, Broker> brokers,
      Clock clock,
      Consumer<Reading> accepted,
      Consumer<Doubt> doubted,
      Consumer<RawText> raw,
      Upkeep upkeep,
      LongSupplier nanos,
      Duration reopenEvery) {
    refuse(mappings, brokers);
    this.clock = clock;
    this.nanos = nanos;
    this.accepted = accepted;
    this.doubted = doubted;
    this.raw = raw;
    Neighbours neighbours = new Neighbours();
    for (SourceMapping mapping : mappings) {
      sources.put(mapping.source(), new Source(mapping, neighbours, upkeep, clock, this::deal));
    }
    openMqtt(brokers);
    openSerial(reopenEvery);
  }

  private static void refuse(List<SourceMapping> mappings, Map<String, Broker> brokers) {
    List<Fault> faults = new ArrayList<>();
    Set<String> names = new HashSet<>();
    for (SourceMapping mapping : mappings) {
      if (!names.add(mapping.source())) {
        faults.add(
            Fault.of("source " + mapping.source(), "is there twice", "give each its own name"));
      }
      if (mapping.transport().orElse(null) instanceof Transport.Mqtt mqtt
          && !brokers.containsKey(mqtt.broker())) {
        faults.add(
            Fault.of(
                "source %s broker \"%s\"".formatted(mapping.source(), mqtt.broker()),
                "is not in the settings",
                "add it, or name one of " + brokers.keySet()));
      }
    }
    refuseSharedDevices(mappings, faults);
    if (!faults.isEmpty()) {
      throw new RefusedInput(faults);
    }
  }

  /** Stations that are asked may share a line, at one speed; boards that just talk may not. */
  private static void refuseSharedDevices(List<SourceMapping> mappings, List<Fault> faults) {
    Map<String, SourceMapping> first = new LinkedHashMap<>();
    for (SourceMapping mapping : mappings) {
      if (!(mapping.transport().orElse(null) instanceof Transport.Serial serial)) {
        continue;
      }
      SourceMapping other = first.putIfAbsent(serial.device(), mapping);
      if (other == null) {
        continue;
      }
      boolean bothAsked =
          mapping.payload().modbus().isPresent() && other.payload().modbus().isPresent();
      String what = "source %s device %s".formatted(mapping.source(), serial.device());
      if (!bothAsked) {
        faults.add(
            Fault.of(
                what,
                "is read by source %s already, and two readers would each get half"
                    .formatted(other.source()),
                "keep one of them"));
      } else if (other.transport().orElse(null) instanceof Transport.Serial theirs
          && !theirs.line().equals(serial.line())) {
        faults.add(
            Fault.of(
                what,
                "is used at %s by source %s and at %s here"
                    .formatted(theirs.line(), other.source(), serial.line()),
                "a line has one speed; set all its stations to it"));
      }
    }
  }

  private void openMqtt(Map<String, Broker> brokers) {
    brokers.forEach(
        (name, broker) -> {
          List<Source> fed = new ArrayList<>();
          for (Source source : sources.values()) {
            if (source.mapping().transport().orElse(null) instanceof Transport.Mqtt mqtt
                && mqtt.broker().equals(name)) {
              fed.add(source);
            }
          }
          Map<Boolean, List<Source>> byTime =
              fed.stream()
                  .collect(Collectors.partitioningBy(each -> each.mapping().timedByItsPayload()));
          openMqtt(broker, byTime.getOrDefault(false, List.of()), LinkManner.CLEAN);
          openMqtt(
              broker.forKeptSession(),
              byTime.getOrDefault(true, List.of()),
              LinkManner.CLEAN.keptByTheBroker());
        });
  }

  /**
   * Sources whose payloads carry a time have what was missed kept for them; for the others it would
   * come as a heap of values nobody knows the age of.
   */
  private void openMqtt(Broker broker, List<Source> fed, LinkManner manner) {
    if (fed.isEmpty()) {
      return;
    }
    Duration slowest =
        fed.stream()
            .map(source -> source.mapping().every())
            .max(Duration::compareTo)
            .orElse(Duration.ZERO);
    Postman postman =
        new Postman(
            fed, new Postman.House(inbox, acknowledger, teller, clock, nanos, this::tellSoon));
    MqttLink link =
        new MqttLink(
            broker,
            postman.filters(),
            postman,
            manner.openedAnewAfter(slowest.multipliedBy(SILENT_INTERVALS)));
    fed.forEach(source -> source.trouble(link::trouble));
    mqttLinks.add(link);
  }

  private void openSerial(Duration reopenEvery) {
    Map<String, List<Source>> polled = new LinkedHashMap<>();
    for (Source source : sources.values()) {
      if (source.mapping().transport().orElse(null) instanceof Transport.Serial serial) {
        if (source.mapping().payload().modbus().isPresent()) {
          polled.computeIfAbsent(serial.device(), device -> new ArrayList<>()).add(source);
        } else {
          openLines(source, serial, reopenEvery);
        }
      }
    }
    polled.forEach((device, stations) -> openPolled(device, stations, reopenEvery));
  }

  private void openLines(Source source, Transport.Serial serial, Duration reopenEvery) {
    SerialLink link =
        new SerialLink(
            serial.device(),
            serial.line(),
            serial.settle(),
            reopenEvery,
            new LineReader(source, serial.device(), inbox, clock, this::tellSoon));
    source.trouble(link::trouble);
    serialLinks.add(link);
  }

  /** Stations of one line take turns. */
  private void openPolled(String device, List<Source> stations, Duration reopenEvery) {
    List<Poll> polls = new ArrayList<>();
    List<ModbusPoll> modbus = new ArrayList<>();
    for (Source station : stations) {
      ModbusRequest request =
          station.mapping().payload().modbus().flatMap(ModbusRules::request).orElseThrow();
      modbus.add(new ModbusPoll(station, request, device, inbox, clock, this::tellSoon));
    }
    polls.addAll(modbus);
    Transport.Serial first = (Transport.Serial) stations.get(0).mapping().transport().orElseThrow();
    PolledLine line =
        new PolledLine(device, first.line(), ANSWER_WITHIN, reopenEvery, polls, this::tellSoon);
    for (int i = 0; i < stations.size(); i++) {
      ModbusPoll poll = modbus.get(i);
      stations.get(i).trouble(() -> line.trouble().or(poll::trouble));
    }
    polledLines.add(line);
  }

  /**
   * Says how to wait until what was handed out is durable: only then are brokers told that they may
   * forget a message. To be called before {@link #start}.
   */
  public void storedBy(Runnable flush) {
    durable = flush;
  }

  private void flush() {
    durable.run();
  }

  /**
   * The machine's clock was set: what sensors said before bears times of the old one, so they are
   * judged as if they had just begun to speak.
   */
  public void clockChanged() {
    sources.values().forEach(source -> inbox.put(source::forget));
  }

  /** Opens the links and begins to read; returns at once. */
  public void start() {
    inbox.start();
    acknowledger.start();
    mqttLinks.forEach(MqttLink::start);
    serialLinks.forEach(SerialLink::start);
    polledLines.forEach(PolledLine::start);
    Future<?> unused = teller.scheduleWithFixedDelay(this::tell, 1, 1, TimeUnit.SECONDS);
  }

  /** On the reading thread: one payload's verdict goes to all who want it. */
  private void deal(Source source, RawReading payload, Intake.Taken taken) {
    source.watch().took(taken, payload.way() == RawReading.Way.RETAINED, nanos.getAsLong());
    raw.accept(taken.raw());
    for (Consumer<RawAndVerdict> listener : rawListeners) {
      listener.accept(
          new RawAndVerdict(
              source.mapping().source(),
              payload.channel(),
              payload.arrivedAt(),
              taken.raw().text(),
              taken.verdict()));
    }
    taken.readings().forEach(accepted);
    taken.doubts().forEach(doubted);
  }

  /** The state of every source, in the settings' order. */
  public List<SourceStatus> statuses() {
    long now = nanos.getAsLong();
    return sources.values().stream().map(source -> source.status(now)).toList();
  }

  /**
   * Takes up where the house left off: the newest readings that are kept, so that a jump over a
   * restart is seen and a sensor in doubt stays so. Before {@link #start}.
   */
  public void resume(List<Reading> newest) {
    for (Reading last : newest) {
      Source known = sources.get(last.source());
      if (known != null) {
        known.resume(last);
      }
    }
  }

  /** The sources that read humidity, each with the names of its sensors. */
  public Map<String, List<String>> hygrometers() {
    Map<String, List<String>> found = new LinkedHashMap<>();
    sources.forEach(
        (name, source) -> {
          if (source.calibration().readsHumidity()) {
            found.put(name, source.watch().sensors());
          }
        });
    return found;
  }

  /** What a sensor sent over the last quarter of an hour, as it came, oldest first. */
  public List<JustSent> justSent(String source, String sensor) {
    Source known = sources.get(source);
    return known == null ? List.of() : known.watch().justSent(sensor);
  }

  /** A humidity as sent, with the correction that holds for that sensor at that time, %. */
  public double corrected(String source, String sensor, double sentRhPct, Instant at) {
    Source known = sources.get(source);
    return known == null ? sentRhPct : known.calibration().corrected(sensor, sentRhPct, at);
  }

  /** Called when a source's state or trouble is another than before; within a second. */
  public void onStatus(Consumer<SourceStatus> listener) {
    statusListeners.add(listener);
  }

  /** Called with every payload and its verdict, on the reading thread. */
  public void onRaw(Consumer<RawAndVerdict> listener) {
    rawListeners.add(listener);
  }

  /** Stops hearing what {@link #onRaw} gave. */
  public void offRaw(Consumer<RawAndVerdict> listener) {
    rawListeners.remove(listener);
  }

  /** Whether every broker has been reached and subscribed to at this moment. */
  boolean allConnected() {
    return mqttLinks.stream().allMatch(MqttLink::connected);
  }

  /** Messages dropped because more came than could be read. */
  public long dropped() {
    return inbox.dropped();
  }

  private void tellSoon() {
    try {
      teller.execute(this::tell);
    } catch (RejectedExecutionException e) {
      LOG.debug("the sensors are closing");
    }
  }

  private void tell() {
    try {
      for (SourceStatus status : statuses()) {
        SourceStatus before = lastTold.put(status.source(), status);
        boolean same =
            before != null
                && before.state() == status.state()
                && before.trouble().isPresent() == status.trouble().isPresent();
        if (!same) {
          statusListeners.forEach(listener -> listener.accept(status));
        }
      }
    } catch (RuntimeException e) {
      LOG.error("a listener to the sensors' states failed", e);
    }
  }

  /** Closes the links, reads what has come, and stops. */
  @Override
  public void close() {
    teller.shutdownNow();
    serialLinks.forEach(SerialLink::close);
    polledLines.forEach(PolledLine::close);
    // Before the links: what is read and stored is acknowledged while there is a way to say so.
    inbox.close();
    acknowledger.close();
    mqttLinks.forEach(MqttLink::close);
  }
}

package coatwright;

import coatwright.cli.Hall.EarWish;
import coatwright.cli.Hall.Heard;
import coatwright.cli.Hall.Proposed;
import coatwright.cli.Stop;
import coatwright.config.Settings;
import coatwright.sensors.mqtt.Broker;
import coatwright.sensors.mqtt.MqttLink;
import coatwright.sensors.mqtt.MqttListener;
import coatwright.sensors.proposal.Origin;
import coatwright.sensors.proposal.Overheard;
import coatwright.sensors.proposal.Proposal;
import coatwright.sensors.proposal.Proposer;
import coatwright.sensors.serial.SerialLink;
import coatwright.sensors.serial.SerialListener;
import coatwright.sensors.serial.SerialSettings;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadLocalRandom;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Function;

/** Listens where no mapping is yet, has one proposed, and keeps it when a person says so. */
final class SetUpAid {
  /** How many kept texts of a source are looked at. */
  static final int MOST_KEPT = 200;

  private static final int MOST_HEARD = 5_000;
  private static final int MOST_SHOWN = 200;
  private static final Duration REOPEN = Duration.ofSeconds(2);

  private final Optional<Settings> settings;
  private final Path settingsFile;

  SetUpAid(Optional<Settings> settings, Path settingsFile) {
    this.settings = settings;
    this.settingsFile = settingsFile;
  }

  Proposed propose(
      EarWish wish,
      String name,
      Optional<String> room,
      Consumer<String> tell,
      Function<String, List<Heard>> kept) {
    List<String> rooms =
        settings
            .map(each -> each.rooms().stream().map(Settings.Room::name).toList())
            .orElse(List.of());
    Optional<String> stands = room.or(() -> rooms.size() == 1 ? Optional.of(rooms.get(0)) : room);
    stands.filter(each -> !rooms.isEmpty() && !rooms.contains(each)).ifPresent(this::refuseRoom);
    Origin origin;
    List<Overheard> heard;
    Optional<String> trouble = Optional.empty();
    if (wish.from().isPresent()) {
      origin = said(wish);
      heard = file(wish.from().get());
    } else if (wish.broker().isPresent()) {
      Broker broker = broker(wish.broker().get());
      origin = new Origin.Broker(broker.name());
      Ear ear = new Ear(tell);
      heard = ear.hearBroker(broker, wish.filter(), wish.span());
      trouble = ear.trouble;
    } else if (wish.device().isPresent()) {
      origin = new Origin.Device(wish.device().get(), wish.line());
      Ear ear = new Ear(tell);
      heard = ear.hearDevice(wish.device().get(), line(wish.line()), wish.span());
      trouble = ear.trouble;
    } else {
      String source = wish.source().orElseThrow();
      origin = new Origin.File();
      heard = kept.apply(source).stream().map(SetUpAid::overheard).toList();
    }
    Proposal proposal = new Proposer(origin, name, stands).propose(heard);
    List<String> remarks = new ArrayList<>();
    trouble.ifPresent(remarks::add);
    remarks.addAll(proposal.remarks());
    return new Proposed(
        proposal.yaml(), proposal.sources(), proposal.unsure(), proposal.trials(), remarks, rooms);
  }

  /** A file does not say how the sensor is reached; the person may. */
  private Origin said(EarWish wish) {
    if (wish.broker().isPresent()) {
      return new Origin.Broker(broker(wish.broker().get()).name());
    }
    return wish.device().isPresent()
        ? new Origin.Device(wish.device().get(), wish.line())
        : new Origin.File();
  }

  private void refuseRoom(String named) {
    throw new Stop(
        Stop.BAD_INPUT,
        "no room \"%s\" in the settings; there are: %s"
            .formatted(
                named,
                String.join(
                    ", ",
                    settings.orElseThrow().rooms().stream().map(Settings.Room::name).toList())));
  }

  private static Overheard overheard(Heard kept) {
    return new Overheard(kept.channel(), octets(kept.text()));
  }

  private static String octets(String text) {
    return new String(text.getBytes(StandardCharsets.UTF_8), StandardCharsets.ISO_8859_1);
  }

  private Broker broker(String name) {
    Settings known =
        settings.orElseThrow(
            () ->
                new Stop(
                    Stop.BAD_INPUT,
                    "there are no settings at %s, and so no broker \"%s\"; write the broker there first"
                        .formatted(settingsFile, name)));
    Settings.Broker broker = known.brokers().get(name);
    if (broker == null) {
      throw new Stop(
          Stop.BAD_INPUT,
          "no broker \"%s\" in the settings; there are: %s"
              .formatted(name, String.join(", ", known.brokers().keySet())));
    }
    // A client id of its own: the daemon's would be thrown out by a second one of its name.
    String id = "coatwright-listen-" + ThreadLocalRandom.current().nextInt(1_000_000);
    try {
      return new Broker(
          name, URI.create(broker.url()), broker.user(), broker.passwordFile(), broker.ca(), id);
    } catch (IllegalArgumentException wrong) {
      throw new Stop(Stop.BAD_INPUT, String.valueOf(wrong.getMessage()), wrong);
    }
  }

  private static SerialSettings line(String written) {
    return SerialSettings.parse(written)
        .orElseThrow(
            () ->
                new Stop(
                    Stop.BAD_INPUT,
                    "line \"%s\" is not a speed and a form; write it like 9600 8N1"
                        .formatted(written)));
  }

  /** Payloads of a file: recorded lines with {@code raw} and {@code topic}, or bare texts. */
  private static List<Overheard> file(Path file) {
    try {
      byte[] bytes = Files.readAllBytes(file);
      List<Overheard> heard = new ArrayList<>();
      new String(bytes, StandardCharsets.ISO_8859_1)
          .lines()
          .filter(line -> !line.isBlank())
          .forEach(line -> heard.add(Overheard.ofLine(line)));
      return heard;
    } catch (IOException unreadable) {
      throw new Stop(
          Stop.BAD_INPUT, file + " cannot be read; check its name and folder", unreadable);
    }
  }

  /** Writes the file beside the other sources, whole or not at all, and never over one. */
  Path accept(String name, String yaml) {
    Path folder = settingsFile.toAbsolutePath().resolveSibling("sources");
    Path file = folder.resolve(name + ".yaml");
    try {
      Files.createDirectories(folder);
      Files.writeString(file, yaml, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
      return file;
    } catch (FileAlreadyExistsException there) {
      throw new Stop(
          Stop.BAD_INPUT,
          file + " is there already and is not written over; give another name, or move it away",
          there);
    } catch (IOException refused) {
      throw new Stop(Stop.BAD_INPUT, file + " cannot be written: " + refused.getMessage(), refused);
    }
  }

  /** Collects what comes over a link until the time is up. */
  private static final class Ear {
    private final BlockingQueue<Overheard> came = new LinkedBlockingQueue<>(MOST_HEARD);
    private final Consumer<String> tell;
    private Optional<String> trouble = Optional.empty();

    Ear(Consumer<String> tell) {
      this.tell = tell;
    }

    List<Overheard> hearBroker(Broker broker, List<String> filters, Duration span) {
      MqttListener listener =
          new MqttListener() {
            @Override
            public void message(String topic, byte[] bytes, boolean retained) {
              came.offer(new Overheard(topic, new String(bytes, StandardCharsets.ISO_8859_1)));
            }

            @Override
            public void tooLong(String topic, int bytes) {
              came.offer(new Overheard(topic, ""));
            }

            @Override
            public void changed() {}
          };
      try (MqttLink link = new MqttLink(broker, filters, listener)) {
        link.start();
        List<Overheard> heard = collect(span);
        trouble = link.trouble();
        return heard;
      }
    }

    List<Overheard> hearDevice(String device, SerialSettings line, Duration span) {
      SerialListener listener =
          new SerialListener() {
            @Override
            public void line(String octets, boolean settling) {
              came.offer(new Overheard(device, octets));
            }

            @Override
            public void overlong() {
              came.offer(new Overheard(device, "\u0000\u0001\u0002"));
            }

            @Override
            public void changed() {}
          };
      try (SerialLink link = new SerialLink(device, line, Duration.ZERO, REOPEN, listener)) {
        link.start();
        List<Overheard> heard = collect(span);
        trouble = link.trouble();
        return heard;
      }
    }

    private List<Overheard> collect(Duration span) {
      List<Overheard> heard = new ArrayList<>();
      long until = System.nanoTime() + span.toNanos();
      try {
        while (heard.size() < MOST_HEARD) {
          long left = until - System.nanoTime();
          Overheard next = left <= 0 ? null : came.poll(left, TimeUnit.NANOSECONDS);
          if (next == null) {
            return heard;
          }
          heard.add(next);
          if (heard.size() <= MOST_SHOWN) {
            tell.accept(shown(next));
          }
        }
      } catch (InterruptedException stopped) {
        Thread.currentThread().interrupt();
      }
      return heard;
    }

    private static String shown(Overheard heard) {
      String text =
          new String(heard.octets().getBytes(StandardCharsets.ISO_8859_1), StandardCharsets.UTF_8);
      String printable = text.replaceAll("\\p{Cntrl}", "\uFFFD").strip();
      return heard.channel() + "  " + printable;
    }
  }
}

package coatwright.cli;

import coatwright.film.Finish;
import coatwright.outlook.Outlook;
import coatwright.quantity.UnitSystem;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Port: what the commands ask of the house without a running daemon, and the starting of one. The
 * root implements it, because it alone knows the settings, the store and the other doors.
 */
public interface Hall {
  /**
   * Where the settings and the data lie; empty means the usual place.
   *
   * @param config {@code coatwright.yaml}
   */
  record Place(Optional<Path> config, Optional<Path> data) {}

  /**
   * What a command has to know of the shop.
   *
   * @param host where its daemon listens
   */
  record ShopFacts(String host, int port, UnitSystem units, ZoneId zone) {}

  /**
   * How the demo is to run.
   *
   * @param port of the pages; 0 = any free one
   * @param brokerPort of its own broker; 0 = any free one
   * @param stopAfter end by itself once it was up for so long
   */
  record DemoWish(OptionalInt port, OptionalInt brokerPort, Optional<Duration> stopAfter) {}

  /**
   * One line of a check-up.
   *
   * @param what the thing looked at
   * @param fine whether it is as it should be
   * @param says what was found, and what to do where it is not fine
   */
  record Check(String what, boolean fine, String says) {}

  /**
   * What to replay.
   *
   * @param schedule coats of the reference job to lay from the first reading
   */
  record ReplayWish(Path readings, Path mapping, Optional<Path> coats, OptionalInt schedule) {}

  /** The shop's facts by its settings; the defaults where there is no file of settings. */
  ShopFacts shop(Place place);

  /** The finishes this place knows, by name. */
  Map<String, Finish> finishes(Place place);

  /** The outlook of a coat described in the words of the {@code outlook} command. */
  Outlook outlook(Place place, Map<String, String> form);

  /** Runs the daemon until it is told to stop. */
  void run(Place place, Consumer<String> say);

  /** Runs the demo until it is told to stop. */
  void demo(Place place, DemoWish wish, Consumer<String> say);

  /** Looks at settings, store and sensors without a daemon. */
  List<Check> checkup(Place place);

  /** Reads payloads of a file, one JSON object a line, by mappings of a file; tells each answer. */
  void listen(Path mappings, Path payloads, Consumer<Object> tell);

  /**
   * One kept text beside what it is read as by today's mapping.
   *
   * @param id its source and the moment it came
   * @param verdict what became of it when it came
   * @param reason why it was held back or refused then
   * @param accepted values as {@code listen --from} prints them
   * @param heldBack values kept aside, each with its reason
   * @param refused what could not be read, each with its reason
   */
  record Heard(
      String id,
      String source,
      String channel,
      Instant arrivedAt,
      String text,
      String verdict,
      Optional<String> reason,
      List<?> accepted,
      List<?> heldBack,
      List<?> refused) {}

  /** The newest texts the shop kept, of one source or of all; oldest first. */
  List<Heard> kept(Place place, @Nullable String source, int atMost);

  /**
   * What to overhear, and for how long.
   *
   * @param source a source of the settings whose kept texts are taken
   * @param from a file of payloads, one a line, or of recorded lines
   * @param broker name of a broker of the settings
   * @param filter topics to hear of it
   * @param device a serial device
   * @param line its speed and form, like {@code 9600 8N1}
   * @param span how long to listen
   */
  record EarWish(
      Optional<String> source,
      Optional<Path> from,
      Optional<String> broker,
      List<String> filter,
      Optional<String> device,
      String line,
      Duration span) {}

  /**
   * A mapping proposed of what was overheard.
   *
   * @param yaml settings ready to be kept; empty when nothing could be made
   * @param sources how many sources it holds
   * @param unsure what a person has to look at
   * @param trials what it reads of what was heard
   * @param remarks what was left out or could not be made, each with its remedy
   * @param rooms the rooms a source may stand in
   */
  record Proposed(
      String yaml,
      int sources,
      List<String> unsure,
      List<?> trials,
      List<String> remarks,
      List<String> rooms) {}

  /**
   * Listens without a mapping and proposes one.
   *
   * @param name of the source to be
   * @param room it stands in, where it is known
   * @param heard is told each payload as it comes
   */
  Proposed propose(
      Place place, EarWish wish, String name, Optional<String> room, Consumer<String> heard);

  /**
   * Keeps a proposal as a source of the shop; never writes over a file.
   *
   * @return the file written
   */
  Path accept(Place place, String name, String yaml);

  /** Walks a file of readings and coats; answers with a record of the contract. */
  Object replay(Place place, ReplayWish wish);

  /** Answers a case described in words; a record of the contract. */
  Object describedCase(Place place, Path described);

  /** Writes readings, entries and warnings to a folder; answers with the files written. */
  List<Path> export(Place place, Path folder);
}

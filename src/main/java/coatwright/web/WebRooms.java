package coatwright.web;

import coatwright.climate.Climate;
import coatwright.climate.Happening;
import coatwright.climate.ReadingLog;
import coatwright.climate.SourceStatus;
import coatwright.film.Finish;
import coatwright.journal.Forms;
import coatwright.journal.Journal;
import coatwright.journal.SaltBook;
import coatwright.outlook.OutlookRequest;
import coatwright.outlook.Outlooks;
import coatwright.quantity.UnitSystem;
import coatwright.review.Reviews;
import coatwright.watch.Watch;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Supplier;

/**
 * The rooms this door opens to, and what it must know of the shop.
 *
 * @param saltBook the checks of the sensors against salts
 * @param readings where readings are kept
 * @param finishes every finish by its name, in the order people should read them
 * @param sources the state of every source now
 * @param storeTrouble what keeps readings or entries from being written, if anything does
 * @param mirrors how each mirror of the database does
 * @param backup when the database was last copied and how to copy it, in one sentence
 * @param missed what befell the house itself between two moments, oldest first
 * @param outlookForm reads a described coat from the command line's words
 * @param shop the shop's name
 * @param zone the shop's time zone; every time is written with its offset
 * @param units the units its screens start in
 * @param invented true when the shop is the demo's: every page says so
 * @param clock tells what "now" is
 */
public record WebRooms(
    Climate climate,
    Journal journal,
    Forms forms,
    SaltBook saltBook,
    ReadingLog readings,
    Outlooks outlooks,
    Watch watch,
    Reviews reviews,
    Map<String, Finish> finishes,
    Supplier<List<SourceStatus>> sources,
    Supplier<Optional<String>> storeTrouble,
    Supplier<List<MirrorView>> mirrors,
    Supplier<String> backup,
    BiFunction<Instant, Instant, List<Happening>> missed,
    BiFunction<Map<String, String>, Map<String, Finish>, OutlookRequest> outlookForm,
    String shop,
    ZoneId zone,
    UnitSystem units,
    boolean invented,
    Clock clock) {
  public WebRooms {
    finishes = Collections.unmodifiableMap(new LinkedHashMap<>(finishes));
  }
}

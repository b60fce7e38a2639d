package coatwright.store.influx;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.climate.Reading;
import coatwright.climate.Readings;
import coatwright.climate.Role;
import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.EntryBody;
import coatwright.journal.Method;
import coatwright.journal.Observation;
import coatwright.journal.PartPath;
import coatwright.journal.Piece;
import coatwright.journal.Strike;
import coatwright.outlook.PredictionLog.Kept;
import coatwright.store.Outgoing.OfEntry;
import coatwright.store.Outgoing.OfPrediction;
import coatwright.store.Outgoing.OfReading;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;

/**
 * Expected lines are written out by hand from the published syntax of line protocol: {@code
 * measurement,tag=value field=value time}, with comma, blank and equals sign escaped in tags.
 */
class LinesTest {
  private static final Instant NOON = Instant.parse("2026-03-14T12:00:00.250Z");
  private static final PartPath DOOR = PartPath.parse("cabinet/left-door/front");

  private final Lines lines = new Lines("Quay, no. 1");

  @Test
  void writesAReadingWithUnitsInItsNames() {
    Reading air = Readings.air("wall", "finishing room", NOON, 20.25, 55);

    assertThat(lines.of(new OfReading(air, 0)))
        .contains(
            "coatwright_reading,role=room,room=finishing\\ room,sensor=wall,"
                + "shop=Quay\\,\\ no.\\ 1,source=wall"
                + " rh_error_pct=2.0,rh_pct=55.0,temperature_c=20.25,temperature_error_k=0.3"
                + " 1773489600250");
  }

  @Test
  void leavesOutWhatAReadingLacksAndShowsItsFlags() {
    Reading probe =
        new Reading(
            "probe",
            "probe=1",
            Role.PIECE,
            Optional.empty(),
            Optional.of("cabinet/door"),
            NOON,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.of(-0.5),
            0.5,
            0,
            List.of("step", "fast"));

    assertThat(lines.of(new OfReading(probe, 0)))
        .contains(
            "coatwright_reading,part=cabinet/door,role=piece,sensor=probe\\=1,"
                + "shop=Quay\\,\\ no.\\ 1,source=probe"
                + " flags=\"step fast\",surface_temperature_c=-0.5,temperature_error_k=0.5"
                + " 1773489600250");
  }

  @Test
  void keepsApartTwoReadingsOfOneMillisecond() {
    Reading air = Readings.air("wall", "bench", NOON, 20, 50);

    assertThat(lines.of(new OfReading(air, 0)).orElseThrow()).doesNotContain("nth");
    assertThat(lines.of(new OfReading(air, 1)).orElseThrow()).contains(",nth=1,");
  }

  @Test
  void writesACoatAndItsStrikeAsOnePointWithMoreFields() {
    Coat coat =
        new Coat(
            DOOR,
            "J1",
            "e4",
            NOON,
            Optional.of(NOON.plusSeconds(90)),
            "finishing room",
            Method.BRUSH,
            OptionalDouble.of(75),
            OptionalDouble.empty(),
            Optional.empty());
    Entry laid = entry("e5", coat);
    Entry strike = entry("e6", new Strike("e5", "wrong door"));
    String series =
        "coatwright_coat,entry=e5,jar=J1,method=brush,part=cabinet/left-door/front,"
            + "room=finishing\\ room,shop=Quay\\,\\ no.\\ 1 ";

    assertThat(lines.of(new OfEntry(5, laid, Optional.empty())))
        .contains(series + "brushing_min=1.5,laid=1.0,wet_film_um=75.0 1773489600250");
    assertThat(lines.of(new OfEntry(6, strike, Optional.of(laid))))
        .contains(series + "struck=1.0 1773489600250");
  }

  @Test
  void writesANoteWithItsGradeOrOutcome() {
    Observation clouded =
        new Observation(
            DOOR,
            Optional.of("e5"),
            Observation.What.CLOUDED,
            OptionalInt.of(3),
            Optional.empty(),
            Optional.of("at the edge"));

    assertThat(lines.of(new OfEntry(7, entry("e7", clouded), Optional.empty())))
        .contains(
            "coatwright_note,coat=e5,entry=e7,part=cabinet/left-door/front,"
                + "shop=Quay\\,\\ no.\\ 1,what=clouded grade=3.0,noted=1.0 1773489600250");
  }

  @Test
  void hasNoLineForWhatIsNeitherCoatNorNote() {
    Entry piece = entry("e1", new Piece("cabinet", Optional.empty(), Optional.empty()));
    Entry strike = entry("e2", new Strike("e1", "twice"));

    assertThat(lines.of(new OfEntry(1, piece, Optional.empty()))).isEmpty();
    assertThat(lines.of(new OfEntry(2, strike, Optional.of(piece)))).isEmpty();
    assertThat(lines.of(new OfEntry(2, strike, Optional.empty()))).isEmpty();
  }

  @Test
  void writesADateThatMovedAndOneThatWillNotCome() {
    Kept moved =
        new Kept(
            "cabinet/left-door",
            "rub out",
            NOON,
            Optional.of(NOON.plusSeconds(100)),
            Optional.of(NOON.plusSeconds(200)),
            Optional.empty(),
            Optional.empty(),
            "the air was damp");
    Kept never =
        new Kept(
            "cabinet/left-door",
            "rub out",
            NOON,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.of(NOON),
            "too cold");
    String series =
        "coatwright_outlook,milestone=rub\\ out,part=cabinet/left-door,"
            + "shop=Quay\\,\\ no.\\ 1 ";

    assertThat(lines.of(new OfPrediction(1, moved, 0)))
        .contains(series + "dated=1.0,p10_at_s=1773489700.25,p50_at_s=1773489800.25 1773489600250");
    assertThat(lines.of(new OfPrediction(2, never, 0)))
        .contains(series + "dated=0.0,was_at_s=1773489600.25 1773489600250");
  }

  @Test
  void writesNumbersAlikeInEveryLocale() {
    Locale usual = Locale.getDefault();
    try {
      Locale.setDefault(Locale.GERMANY);
      assertThat(
              lines
                  .of(new OfReading(Readings.air("wall", "bench", NOON, 1234.5678, 50), 0))
                  .orElseThrow())
          .contains("temperature_c=1234.5678,");
    } finally {
      Locale.setDefault(usual);
    }
  }

  /** Whatever a sensor is called, its line stays one line of three parts. */
  @Property(seed = "20261125")
  void everyNameMakesOneLineOfThreeParts(
      @ForAll @StringLength(min = 1, max = 12) String name,
      @ForAll @DoubleRange(min = -40, max = 90) double tempC) {
    String line =
        lines.of(new OfReading(Readings.air(name, name, NOON, tempC, 50), 0)).orElseThrow();

    assertThat(line).doesNotContain("\n").doesNotContain("\r");
    assertThat(line.split("(?<!\\\\) ", -1)).hasSize(3);
    assertThat(line).contains("temperature_c=").endsWith(" 1773489600250");
  }

  private static Entry entry(String id, EntryBody body) {
    return new Entry(id, NOON, NOON.plusSeconds(60), Optional.empty(), body);
  }
}

package coatwright.replay;

import static coatwright.replay.Records.BY_THE_MINUTE;
import static coatwright.replay.Records.REAL;
import static coatwright.replay.Records.START;
import static coatwright.replay.Records.line;
import static coatwright.replay.Records.mapping;
import static coatwright.replay.Records.steady;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.config.SettingsFolder;
import coatwright.json.Json;
import coatwright.outlook.Outlook;
import coatwright.outlook.OutlookSettings;
import coatwright.quantity.RefusedInput;
import coatwright.review.Why.AirAtFault;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** A record run again through the whole house, from its lines to milestones, warnings and cases. */
class ReplayTest {
  private static Replayed run(String csv, String mapping, String coats, int schedule) {
    return Records.replay()
        .run(
            csv,
            mapping(mapping),
            coats.isEmpty() ? Optional.empty() : Optional.of(coats),
            schedule == 0 ? OptionalInt.empty() : OptionalInt.of(schedule));
  }

  private static Instant p50(Replayed.CoatAnswer coat, String milestone) {
    return coat.milestones().stream()
        .filter(m -> m.name().equals(milestone))
        .findFirst()
        .flatMap(Replayed.Milestone::p50)
        .orElseThrow();
  }

  /**
   * Film model, set shellac, 20 °C and 50 %: touch 6.2 min, recoat 7.0 min; the set is fitted to
   * practice.
   */
  @Test
  void laysTheReferenceJobFromTheFirstReadingAndTellsItsMilestones() {
    Replayed replayed = run(steady(20, 50, 60), BY_THE_MINUTE, "", 2);
    assertThat(replayed.readings().count()).isEqualTo(60);
    assertThat(replayed.readings().accepted()).isEqualTo(60);
    assertThat(replayed.readings().refused()).isEmpty();
    assertThat(replayed.coats())
        .extracting(Replayed.CoatAnswer::start)
        .containsExactly(START, START.plus(Duration.ofMinutes(15)));
    Replayed.CoatAnswer first = replayed.coats().get(0);
    assertThat(first.outlook().clouding().orElseThrow().level())
        .isEqualTo(Outlook.CloudingLevel.NONE_EXPECTED);
    double touchMin = Duration.between(START, p50(first, "dry to touch")).toSeconds() / 60.0;
    assertThat(touchMin).isCloseTo(6.2, within(0.4));
    assertThat(p50(first, "rub out")).isAfter(p50(first, "dry hard"));
    assertThat(replayed.warnings()).isEmpty();
    assertThat(replayed.review()).isEmpty();
  }

  @Test
  void warnsWhenTheAirTurnsDampOverAWetFilmAndTheCaseSaysSo() {
    StringBuilder csv = new StringBuilder("time,t,rh\n");
    for (int m = 0; m < 100; m++) {
      csv.append(line(m, 24, m < 30 ? 50 : Math.min(88, 50 + 6 * (m - 30))));
    }
    String coats =
        """
        id,part,start,cut,wetFilm,wood,strength,seen
        front,stool/seat,+35min,1.5lb,75um,24C,95%,clouded=3
        """;
    Replayed replayed = run(csv.toString(), BY_THE_MINUTE, coats, 0);
    assertThat(replayed.warnings()).extracting(Replayed.Said::kind).contains("clouding");
    Replayed.Said said = replayed.warnings().get(0);
    assertThat(said.from()).isBetween(START.plusSeconds(35 * 60), START.plusSeconds(45 * 60));
    assertThat(said.message()).contains("stool/seat still wet");
    assertThat(replayed.review())
        .singleElement()
        .satisfies(
            why -> {
              assertThat(why.coat()).isEqualTo("front");
              assertThat(why.airAtFault()).isEqualTo(AirAtFault.YES);
            });
  }

  @Test
  void aSilentSensorIsWarnedOfAndTheSilenceIsAGap() {
    StringBuilder csv = new StringBuilder("time,t,rh\n");
    for (int m = 0; m < 240; m++) {
      if (m < 60 || m > 150) {
        csv.append(line(m, 20, 50));
      }
    }
    Replayed replayed = run(csv.toString(), BY_THE_MINUTE, "", 0);
    assertThat(replayed.readings().gaps()).hasSize(1);
    assertThat(replayed.warnings())
        .singleElement()
        .satisfies(
            w -> {
              assertThat(w.kind()).isEqualTo("sensor");
              assertThat(w.from())
                  .isBetween(START.plusSeconds(74 * 60), START.plusSeconds(78 * 60));
              assertThat(w.to()).isPresent();
            });
  }

  @Test
  void everyLineThatWasNotBelievedIsNamedWithItsReason() {
    String csv =
        "time,t,rh\n"
            + line(0, 20, 50)
            + "2026-03-02T09:01:00Z,135,50\n"
            + line(2, 20, 50)
            + "yesterday,20,50\n"
            + line(1, 20, 50)
            + line(3, 20, 50);
    Replayed.Readings readings = run(csv, BY_THE_MINUTE, "", 0).readings();
    assertThat(readings.count()).isEqualTo(6);
    assertThat(readings.accepted()).isEqualTo(3);
    assertThat(readings.refused()).extracting(Replayed.Refused::line).containsExactly(3, 5, 6);
    assertThat(readings.refused().get(1).reason()).isEqualTo("no time in column time");
    assertThat(readings.refused().get(2).reason()).isEqualTo("earlier than the line before");
  }

  @Test
  void aLineWithOneGoodAndOneBadFieldIsAcceptedAndItsBadFieldIsNamed() {
    String csv =
        "time,t,rh\n"
            + line(0, 20, 50)
            + "2026-03-02T09:01:00Z,20.01,nan\n"
            + "2026-03-02T09:02:00Z,20.02,180\n"
            + line(3, 20, 50);
    Replayed.Readings readings = run(csv, BY_THE_MINUTE, "", 0).readings();
    assertThat(readings.count()).isEqualTo(4);
    assertThat(readings.accepted()).isEqualTo(4);
    assertThat(readings.refused()).extracting(Replayed.Refused::line).containsExactly(3, 4);
    assertThat(readings.refused().get(0).reason()).isEqualTo("rhPct: no value (\"nan\")");
    assertThat(readings.refused().get(1).reason()).contains("rh", "180");
  }

  /**
   * Suthaharan et al., ISSNIP 2010 (ODC-BY 1.0 / CC BY 4.0): six hours indoors, steam let in at 11
   * 730 s.
   */
  @Test
  void sixRealHoursIndoorsWalkFromScreenToOutlookAndTheSteamIsSeen() {
    String coats =
        """
        [{"id": "calm", "part": "stool/seat", "start": "+120min", "wood": "27.7C", "cut": "1.5lb"},
         {"id": "steam", "part": "stool/leg", "start": "+194min", "wood": "27.7C", "cut": "1.5lb",
          "seen": "clouded=3"}]
        """;
    Replayed replayed = run(Records.resource("realdata/indoor_single_hop.csv"), REAL, coats, 0);
    assertThat(replayed.readings().count()).isEqualTo(987);
    assertThat(replayed.readings().refused())
        .as("the sensor in the jet of steam, up to 56 °C, and nothing else")
        .hasSizeBetween(6, 20)
        .allSatisfy(r -> assertThat(r.line()).isBetween(449, 470));
    assertThat(replayed.coats().get(0).outlook().clouding().orElseThrow().level())
        .isEqualTo(Outlook.CloudingLevel.NONE_EXPECTED);
    assertThat(replayed.coats().get(0).start())
        .as("the record counts from zero, and so does the answer")
        .isEqualTo(Instant.EPOCH.plusSeconds(7200));
    assertThat(replayed.review().get(0).airAtFault()).isEqualTo(AirAtFault.YES);
    assertThat(replayed.review().get(0).air().get(0).at())
        .isBetween(Instant.EPOCH.plusSeconds(9840), Instant.EPOCH.plusSeconds(9900));
  }

  @Test
  void theAnswerHasTheKeysOfTheContract() {
    Replayed replayed =
        run(steady(20, 50, 40), BY_THE_MINUTE, "part,start,seen\nstool/seat,+5min,clouded=2\n", 0);
    JsonNode json = Json.mapper().valueToTree(replayed);
    assertThat(json.fieldNames())
        .toIterable()
        .containsExactly("readings", "coats", "warnings", "review");
    assertThat(json.path("coats").get(0).fieldNames())
        .toIterable()
        .contains("id", "outlook", "milestones");
    assertThat(json.path("coats").get(0).path("milestones").get(0).fieldNames())
        .toIterable()
        .containsExactly("name", "p10", "p50", "p90");
    assertThat(json.path("readings").fieldNames())
        .toIterable()
        .containsExactly("count", "accepted", "refused", "gaps");
    assertThat(json.path("review").get(0).path("airAtFault").asText()).isEqualTo("no");
  }

  @Test
  void theSameRecordGivesTheSameAnswer() {
    String coats = "part,start\nstool/seat,+5min\n";
    Replayed once = run(steady(22, 60, 30), BY_THE_MINUTE, coats, 0);
    assertThat(run(steady(22, 60, 30), BY_THE_MINUTE, coats, 0)).isEqualTo(once);
  }

  @Test
  void everyFaultOfACoatListIsToldAtOnceWithItsLine() {
    String coats = "id,part,start,cut,finish,colour\na,seat,+5min,2,varnish,red\n";
    assertThatThrownBy(() -> run(steady(20, 50, 30), BY_THE_MINUTE, coats, 0))
        .isInstanceOfSatisfying(
            RefusedInput.class,
            refused ->
                assertThat(refused.faults())
                    .extracting(f -> f.input().split(" ", 2)[0])
                    .containsExactlyInAnyOrderElementsOf(
                        List.of("\"colour\"", "part", "finish", "cut")));
  }

  @Test
  void aWeighedResidueIsNothingThatACoatListCanHold() {
    String coats = "part,start,seen\nstool/seat,+5min,weighed=pass\n";
    assertThatThrownBy(() -> run(steady(20, 50, 30), BY_THE_MINUTE, coats, 0))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining("nothing that can be noted of a coat");
  }

  @Test
  void aCoatOutsideTheRecordIsRefused() {
    assertThatThrownBy(
            () -> run(steady(20, 50, 30), BY_THE_MINUTE, "part,start\nstool/seat,+5h\n", 0))
        .hasMessageContaining("lies outside the record");
  }

  @Test
  void aMappingWithoutTimeIsRefused() {
    String untimed = BY_THE_MINUTE.replaceAll("\"time\": \\{[^}]*\\},", "");
    assertThatThrownBy(() -> run(steady(20, 50, 30), untimed, "", 0))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining("names no time, and a record needs one");
  }

  @Test
  void aLacquerOnShellacStandsOnItAndIsNoSecondCoatOfIt() {
    String coats =
        """
        id,part,finish,start
        a,board/face,shellac-pale,+0min
        b,board/face,lacquer-nitrocellulose,+60min
        c,board/face,lacquer-nitrocellulose,+120min
        """;
    Replayed replayed =
        new Replay(
                SettingsFolder.finishes(Path.of("config/finishes")),
                OutlookSettings.usual("shellac-pale", ZoneOffset.UTC))
            .run(
                steady(25, 50, 180),
                mapping(BY_THE_MINUTE),
                Optional.of(coats),
                OptionalInt.empty());
    assertThat(replayed.coats())
        .extracting(c -> c.outlook().model().name())
        .containsExactly("film/shellac", "film/lacquer", "film/lacquer");
    assertThat(replayed.coats().get(1).outlook().assumptions())
        .noneMatch(a -> a.contains("before"));
    assertThat(replayed.coats().get(2).outlook().assumptions())
        .anyMatch(a -> a.startsWith("1 coat before, 60 min ago"));
    assertThat(p50(replayed.coats().get(2), "rub out"))
        .isAfter(p50(replayed.coats().get(0), "rub out"));
  }
}

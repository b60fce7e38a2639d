package coatwright.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.config.SettingsFolder;
import coatwright.json.Json;
import coatwright.outlook.Outlook;
import coatwright.quantity.RefusedInput;
import coatwright.review.Why.AirAtFault;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Cases told in words: what the conditions fix is answered, and what they do not is asked for. */
class DescribedCasesTest {
  private static final DescribedCases CASES =
      new DescribedCases(SettingsFolder.finishes(Path.of("config/finishes")), "shellac-pale");
  private static final DescribedCases SHELLAC_ONLY =
      new DescribedCases(Map.of("shellac-pale", Records.PALE), "shellac-pale");

  static Stream<Arguments> cases() {
    return Records.resource("cases/described.jsonl")
        .lines()
        .map(line -> Arguments.of(read(line).path("id").asText(), line));
  }

  private static JsonNode read(String line) {
    try {
      return Json.mapper().readTree(line);
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException(e);
    }
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("cases")
  void answersWhatTheConditionsFix(String id, String line) {
    JsonNode told = read(line);
    CaseAnswer answer = CASES.answer(line);
    if (told.has("airAtFault")) {
      assertThat(answer.airAtFault()).hasToString(told.path("airAtFault").asText());
    }
    if (told.has("summary")) {
      assertThat(answer.summary()).hasToString(told.path("summary").asText());
    }
    if (told.has("dewPointC")) {
      Outlook.Clouding clouding = answer.clouding().orElseThrow();
      assertThat(clouding.dewPointC()).isCloseTo(told.path("dewPointC").asDouble(), within(0.1));
      assertThat(clouding.spreadAtWoodK())
          .isCloseTo(told.path("spreadAtWoodK").asDouble(), within(0.1));
    }
  }

  static Stream<Arguments> told() {
    return Stream.of(
        Arguments.of(
            """
            {"conditions": {"finish": "shellac over linseed oil", "temp": "70 F", "rh": "45 % RH",
             "interval": "oil the day before"}, "seen": "cloudy and stayed soft"}
            """,
            "what lies beneath, or under-dried beneath"),
        Arguments.of(
            """
            {"conditions": {"finish": "shellac mixed two years ago", "temp": "21 C",
             "rh": "50 % RH"}, "seen": "still tacky after a week"}
            """,
            "old stock"));
  }

  @ParameterizedTest
  @MethodSource("told")
  void namesFirstTheCauseThatWasTold(String json, String cause) {
    assertThat(CASES.answer(json).causes().get(0).cause()).isEqualTo(cause);
  }

  @Test
  void doesNotBlameColdWoodThatWasAsWarmAsTheAir() {
    CaseAnswer answer =
        CASES.answer(
            """
            {"conditions": {"finish": "shellac", "temp": "21 C", "rh": "35 % RH", "wood": "21 C"},
             "seen": "clouded"}
            """);

    assertThat(answer.causes())
        .filteredOn(cause -> cause.cause().startsWith("wood colder"))
        .allSatisfy(cause -> assertThat(cause.probability()).isLessThan(0.1));
  }

  @Test
  void aSpiritFinishWithNumbersIsComputedByTheFilmModel() {
    CaseAnswer answer =
        CASES.answer(
            "{\"conditions\": {\"finish\": \"shellac\", \"temp\": \"68 F\", \"rh\": \"50 %\"},"
                + " \"seen\": \"turned milky\"}");
    assertThat(answer.clouding().orElseThrow().waterPeakPct()).isPresent();
    assertThat(answer.drying()).isPresent();
    assertThat(answer.airAtFault())
        .as("68 °F and 50 % cloud nothing by themselves: S 0.75")
        .isEqualTo(AirAtFault.NO);
  }

  @Test
  void otherNumbersMoveTheAnswer() {
    String told =
        "{\"conditions\": {\"finish\": \"shellac\", \"temp\": \"82 F\", \"rh\": \"%s\"}, \"seen\":"
            + " \"turned milky\"}";
    assertThat(CASES.answer(told.formatted("80 %")).airAtFault()).isEqualTo(AirAtFault.YES);
    assertThat(CASES.answer(told.formatted("40 %")).airAtFault()).isEqualTo(AirAtFault.NO);
  }

  @Test
  void aLacquerIsComputedByItsOwnFilm() {
    String told =
        "{\"conditions\": {\"finish\": \"nitrocellulose lacquer\", \"temp\": \"82 F\", \"rh\":"
            + " \"%s\"}, \"seen\": \"turned milky\"}";
    CaseAnswer damp = CASES.answer(told.formatted("85 %"));
    CaseAnswer dry = CASES.answer(told.formatted("30 %"));

    assertThat(damp.clouding().orElseThrow().waterPeakPct().orElseThrow())
        .isGreaterThan(dry.clouding().orElseThrow().waterPeakPct().orElseThrow());
    assertThat(damp.airAtFault()).isEqualTo(AirAtFault.YES);
    assertThat(dry.airAtFault()).isEqualTo(AirAtFault.NO);
    assertThat(damp.advice()).anyMatch(said -> said.contains("lacquer-nitrocellulose"));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "wiping varnish, varnish-alkyd",
    "oil-based polyurethane, varnish-urethane",
    "pure tung oil, oil-tung",
    "water-based acrylic, waterborne-acrylic",
    "two-part urethane with hardener, two-part-urethane",
    "post-catalysed lacquer, two-part-acid",
    "garnet shellac, shellac-garnet",
    "shellac, shellac-pale",
  })
  void theShopsFinishNearestToTheWordsIsReckonedAndNamed(String told, String finish) {
    CaseAnswer answer =
        CASES.answer(
            "{\"conditions\": {\"finish\": \"%s\", \"temp\": \"20 C\", \"rh\": \"50 %%\"}, \"seen\": \"stayed soft\"}"
                .formatted(told));

    assertThat(answer.drying()).isPresent();
    assertThat(answer.advice()).anyMatch(said -> said.contains("(" + finish + ")"));
  }

  @Test
  void whereTheShopHasNoSuchFinishOnlyTheDewPointIsReckoned() {
    CaseAnswer answer =
        SHELLAC_ONLY.answer(
            "{\"conditions\": {\"finish\": \"varnish\", \"temp\": \"20 C\", \"rh\": \"50 %\"},"
                + " \"seen\": \"soft\"}");

    assertThat(answer.drying()).isEmpty();
    assertThat(answer.clouding().orElseThrow().dewPointC()).isCloseTo(9.27, within(0.05));
    assertThat(answer.advice()).anyMatch(said -> said.startsWith("Only the dew point"));
  }

  @Test
  void probabilitiesOfTheCausesShownSumToOneAndTheLikeliestStandsFirst() {
    CaseAnswer answer =
        CASES.answer(
            "{\"conditions\": {\"finish\": \"lacquer with retarder\", \"rh\": \"85 % RH\"},"
                + " \"seen\": \"hazy film that wipes off\"}");
    double sum = answer.causes().stream().mapToDouble(CaseAnswer.Cause::probability).sum();
    assertThat(sum).isCloseTo(1, within(1e-9));
    assertThat(answer.causes())
        .isSortedAccordingTo((a, b) -> Double.compare(b.probability(), a.probability()));
    assertThat(Json.line(answer)).contains("\"for\":[", "\"against\":[", "\"questions\":[");
  }

  @Test
  void asksForTheNumbersThatAreMissing() {
    assertThat(
            CASES
                .answer("{\"conditions\": {\"finish\": \"shellac\"}, \"seen\": \"went cloudy\"}")
                .questions())
        .anyMatch(q -> q.startsWith("What were temperature and humidity"))
        .anyMatch(q -> q.startsWith("How warm was the wood"));
  }

  @Test
  void anAnswerThatComesWithTheCaseIsNotRead() {
    String told = "{\"conditions\": {\"finish\": \"lacquer\"}, \"seen\": \"went cloudy\"%s}";
    CaseAnswer plain = CASES.answer(told.formatted(""));
    assertThat(CASES.answer(told.formatted(", \"consensus_cause\": \"humid storm, 75 F / 85 %\"")))
        .isEqualTo(plain);
  }

  @Test
  void whatDescribesNothingIsRefused() {
    assertThatThrownBy(() -> CASES.answer("[1]")).isInstanceOf(RefusedInput.class);
    assertThatThrownBy(() -> CASES.answer("{")).isInstanceOf(RefusedInput.class);
  }
}

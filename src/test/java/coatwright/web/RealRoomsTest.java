package coatwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The routes over the shop's own rooms say what the document promises. */
class RealRoomsTest {
  private static RealShop shop;
  private static Caller caller;
  private static Shape shape;

  @BeforeAll
  static void openTheDoor() {
    shop = new RealShop();
    caller = new Caller(shop.address());
    shape = new Shape(caller.get("/openapi.json").json());
  }

  @AfterAll
  static void closeTheDoor() {
    shop.close();
  }

  @Test
  void nowSpeaksOfTheOpenSessionAndOffersTheNextCoat() {
    JsonNode now = caller.get("/api/v1/now").json();

    assertThat(shape.faults("Now", now)).isEmpty();
    assertThat(now.path("sessions").path(0).path("open").asBoolean()).isTrue();
    assertThat(now.path("coatOn").path(0).path("coat").asInt()).isEqualTo(3);
    assertThat(now.path("parts")).isNotEmpty();
  }

  @Test
  void theOfferedCoatIsOneTheFormsTake() {
    JsonNode offered = caller.get("/api/v1/now").json().path("coatOn").path(0).path("form");

    Caller.Answer answer = caller.post("/api/v1/coats", offered.toString());

    assertThat(answer.status()).as(answer.body()).isEqualTo(201);
    assertThat(shape.faults("Entry", answer.json())).isEmpty();
    assertThat(answer.json().path("outlook").path("summary").asText()).isNotEmpty();
    caller.post(
        "/api/v1/strikes",
        "{\"entry\": \"" + answer.json().path("entry").asText() + "\", \"reason\": \"a trial\"}");
  }

  @Test
  void aCoatOverAnotherOfTheSamePartIsTakenAndTold() {
    String jar = caller.get("/api/v1/jars").json().path("jars").path(0).path("name").asText();
    String form =
        "{\"part\": \"cabinet/back\", \"jar\": \""
            + jar
            + "\", \"start\": \"-20min\", \"end\": \"-10min\"}";

    JsonNode first = caller.post("/api/v1/coats", form).json();
    JsonNode second = caller.post("/api/v1/coats", form).json();

    assertThat(first.has("caution")).isFalse();
    assertThat(shape.faults("Entry", second)).isEmpty();
    assertThat(second.path("caution").asText())
        .contains(second.path("entry").asText() + " overlaps " + first.path("entry").asText());
    for (JsonNode coat : java.util.List.of(first, second)) {
      caller.post(
          "/api/v1/strikes",
          "{\"entry\": \"" + coat.path("entry").asText() + "\", \"reason\": \"a trial\"}");
    }
  }

  @Test
  void everyDueDateIsInItsOrderAndAsDocumented() {
    JsonNode due = caller.get("/api/v1/due").json().path("due");

    assertThat(due).isNotEmpty();
    due.forEach(one -> assertThat(shape.faults("Due", one)).isEmpty());
    due.forEach(
        one -> {
          if (one.has("p50") && one.has("p90")) {
            assertThat(one.path("p50").asText()).isLessThanOrEqualTo(one.path("p90").asText());
          }
        });
  }

  @Test
  void whyTellsOfTheCloudedCoat() {
    JsonNode why = caller.get("/api/v1/why/cabinet/back").json();

    assertThat(shape.faults("Why", why)).isEmpty();
    assertThat(why.path("sentence").asText()).isNotEmpty();
    assertThat(why.path("air")).isNotEmpty();
  }

  @Test
  void theAirForADescribedCoatFollowsTheModel() {
    JsonNode damp =
        caller
            .post("/api/v1/outlook", "{\"finish\": \"shellac-pale\", \"air\": \"28C,80%\"}")
            .json();

    assertThat(shape.faults("Outlook", damp)).isEmpty();
    assertThat(damp.path("summary").asText()).isEqualTo("hold off");
    assertThat(damp.path("clouding").path("level").asText()).isEqualTo("likely");
  }

  @Test
  void anUnknownNameInAFormIsRefusedWithARemedy() {
    Caller.Answer answer =
        caller.post("/api/v1/coats", "{\"part\": \"cabinet/lft-door\", \"jar\": \"J9\"}");

    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.json().path("faults")).hasSize(2);
  }
}

package coatwright.sensors.proposal;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is proposed from payloads nobody has mapped yet. */
class ProposerTest {
  private static Proposal of(Origin origin, String channel, String... payloads) {
    return new Proposer(origin, "new", Optional.of("hall"))
        .propose(Arrays.stream(payloads).map(text -> new Overheard(channel, text)).toList());
  }

  private static Proposal heard(String... payloads) {
    return of(new Origin.Broker("shop"), "works/hall", payloads);
  }

  private static List<String> says(Proposal proposal) {
    return proposal.trials().stream().map(Proposal.Trial::says).toList();
  }

  @Test
  void readsAFlatObjectAndSaysThatTheUnitIsNotTold() {
    Proposal proposal = heard("{\"temperature\":21.4,\"humidity\":48.2,\"linkquality\":120}");

    assertThat(proposal.yaml())
        .contains("transport: mqtt", "broker: shop", "filter: works/hall", "room: hall")
        .contains("- {quantity: air-temperature, at: /temperature, unit: Cel}")
        .contains("- {quantity: relative-humidity, at: /humidity, unit: '%'}")
        .contains("# Not taken: /linkquality = 120");
    assertThat(says(proposal)).containsExactly("21.4 °C, 48.2 %");
    assertThat(proposal.unsure())
        .singleElement()
        .asString()
        .contains("does not say °C or °F; 21.4 °C is taken, as °F it would be -5.9 °C");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "{\"a\":{\"tempC\":21.4}}|at: /a/tempC, unit: Cel",
        "{\"a\":{\"temp_f\":70.5}}|at: /a/temp_f, unit: '[degF]'",
        "{\"temp\":70.5}|unit: '[degF]'",
        "{\"temp\":294.5}|unit: K",
        "{\"temp\":214,\"rh\":482}|scale: 0.1",
        "{\"t\":21.4,\"rh\":0.47}|at: /rh, unit: '1'",
        "{\"t\":\"21,4\"}|decimal: ','",
        "{\"t\":21.4,\"u\":\"C\"}|unitAt: /u",
        "{\"t\":21.4,\"ts\":1773480590}|time: {at: /ts, form: epoch-auto}",
        "{\"t\":21.4,\"time\":\"2026-03-14T09:29:00Z\"}|time: {at: /time, form: rfc3339}",
        "{\"t\":21.4,\"time\":\"2026-03-14T09:29:00\"}|form: local, zone",
        "{\"t\":21.4,\"vbat\":2950}|quantity: battery-voltage, at: /vbat, unit: mV",
        "{\"nodes\":[{\"id\":\"a\",\"t\":21.4},{\"id\":\"b\",\"t\":20}]}|each: '/nodes/*'",
        "{\"a\":{\"t\":21.4,\"h\":40},\"b\":{\"t\":20.1,\"h\":41}}|each: '/*'",
        "{\"probe\":{\"temp\":17.5}}|role: piece",
        "[{\"bn\":\"x/\",\"n\":\"t\",\"u\":\"Cel\",\"v\":21},{\"n\":\"h\",\"u\":\"%RH\",\"v\":50}]|payload:"
            + " senml",
        "T=21.4;RH=48.2|payload: pattern",
        "Temp: 21.4 *C Hum: 48.2 %|\\*C Hum: (?<h>",
        "node 4: 21.4C 48%|sensorAt: id",
        "21.4,48.2|payload: columns",
        "21,4;48,2|decimal: ','"
      })
  void proposesTheWordThatTheShapeAsksFor(String payload, String word) {
    Proposal proposal = heard(payload);

    assertThat(proposal.sources()).as(proposal.toString()).isEqualTo(1);
    assertThat(proposal.yaml()).contains(word);
    assertThat(proposal.trials())
        .as(proposal.toString())
        .isNotEmpty()
        .allSatisfy(trial -> assertThat(trial.verdict()).isEqualTo("accepted"));
  }

  @Test
  void namesColumnsByTheirHeader() {
    Proposal proposal = heard("ms,temp_c,rh", "100,21.4,48.2", "200,21.5,48.1");

    assertThat(proposal.yaml()).contains("header: true", "at: temp_c, unit: Cel", "at: rh");
    assertThat(says(proposal)).containsExactly("21.4 °C, 48.2 %", "21.5 °C, 48.1 %");
  }

  @Test
  void gathersTopicsThatCarryANumberEach() {
    Proposal proposal =
        new Proposer(new Origin.Broker("shop"), "new", Optional.of("hall"))
            .propose(
                List.of(
                    new Overheard("works/hall/temperature", "21.4"),
                    new Overheard("works/hall/humidity", "48.2"),
                    new Overheard("works/hall/x7", "3")));

    assertThat(proposal.sources()).isEqualTo(1);
    assertThat(proposal.yaml())
        .contains("works/hall/temperature: {quantity: air-temperature, unit: Cel}")
        .contains("works/hall/humidity: {quantity: relative-humidity, unit: '%'}");
    assertThat(proposal.remarks())
        .singleElement()
        .asString()
        .contains("works/hall/x7 = 3 was left out: its name does not say what it is");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "{\"contact\":true}|name the place yourself",
        "4002ca0903bf13ff|write payload: hex",
        "\u0001\u0084\u0002\u00c2\u00c1|try another speed",
        "hello|name the place yourself"
      })
  void saysWhyNothingCouldBeMadeAndWhatToDo(String payload, String said) {
    Proposal proposal = heard(payload);

    assertThat(proposal.isUsable()).isFalse();
    assertThat(proposal.remarks()).anySatisfy(each -> assertThat(each).contains(said));
  }

  @Test
  void saysOfASilentLineThatItMayHaveToBeAsked() {
    Proposal proposal =
        new Proposer(new Origin.Device("/dev/ttyUSB0", "9600 8N1"), "new", Optional.empty())
            .propose(List.of());

    assertThat(proposal.remarks())
        .singleElement()
        .asString()
        .contains("speaks only when asked", "modbus-rtu", "base");
  }

  @Property(tries = 1000, seed = "20261125")
  void neverThrowsWhateverIsHeard(@ForAll @Size(max = 4) List<byte[]> payloads) {
    List<Overheard> heard =
        payloads.stream()
            .map(bytes -> new Overheard("a/b", new String(bytes, StandardCharsets.ISO_8859_1)))
            .toList();

    assertThat(new Proposer(new Origin.Broker("shop"), "new", Optional.empty()).propose(heard))
        .isNotNull();
  }
}

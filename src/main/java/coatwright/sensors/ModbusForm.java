package coatwright.sensors;

import coatwright.sensors.modbus.ModbusAnswer;
import coatwright.sensors.modbus.ModbusRequest;
import coatwright.sensors.modbus.ModbusRtu;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** The bytes that came back to a request for registers. */
final class ModbusForm implements PayloadForm {
  /** What senders put into a register when they have no value: all ones, largest, smallest. */
  private static final List<Integer> NO_SENSOR = List.of(0xFFFF, 0x7FFF, 0x8000);

  private static final int HIGHEST_ADDRESS = 247;
  private final ModbusRules rules;
  private final List<ReadingRule> readings;
  private Optional<ModbusRequest> asked;

  ModbusForm(PayloadRules payload) {
    this.rules = payload.modbus().orElseThrow();
    this.readings = payload.readings();
    this.asked = rules.request();
  }

  @Override
  public void asked(ModbusRequest request) {
    asked = Optional.of(request);
  }

  @Override
  public Opened open(PayloadText payload) {
    byte[] bytes = payload.text().getBytes(StandardCharsets.ISO_8859_1);
    ModbusRequest request = asked.orElseGet(() -> anyUnit(bytes));
    ModbusAnswer answer = ModbusRtu.answer(bytes, request);
    if (answer instanceof ModbusAnswer.Refusal refusal) {
      return new Opened.No(refusal.reason());
    }
    ModbusAnswer.Registers registers = (ModbusAnswer.Registers) answer;
    boolean asMapped =
        request.function() == rules.function()
            && request.start() == rules.start()
            && request.count() == rules.count();
    if (!asMapped) {
      return new Opened.No(
          "function %d, start %d, count %d was asked where the mapping says %d, %d, %d"
              .formatted(
                  request.function(),
                  request.start(),
                  request.count(),
                  rules.function(),
                  rules.start(),
                  rules.count()));
    }
    List<Integer> words = registers.words();
    if (holdNoSensorCodes(words)) {
      return new Opened.No(
          "every register read holds a no-sensor code (all ones, largest or smallest); "
              + "look at the sensor's element and its cable");
    }
    List<String> flags = new ArrayList<>();
    if (registers.resync()) {
      flags.add("resync");
    }
    if (registers.echoed()) {
      flags.add("echo");
    }
    return new Opened.Parts(
        List.of(cells(words, UnaryOperator.identity())), flags, "", otherwise(words));
  }

  /** The unit that answers, where neither settings nor recording name the one asked. */
  private ModbusRequest anyUnit(byte[] bytes) {
    for (int at = 0; at < Math.min(bytes.length, 64); at++) {
      int unit = bytes[at] & 0xFF;
      if (unit >= 1 && unit <= HIGHEST_ADDRESS) {
        ModbusRequest request = to(unit);
        ModbusAnswer answer = ModbusRtu.answer(bytes, request);
        boolean sound =
            !(answer instanceof ModbusAnswer.Refusal refusal)
                || refusal.reason().startsWith("exception");
        if (sound) {
          return request;
        }
      }
    }
    int first = bytes.length == 0 ? 1 : bytes[0] & 0xFF;
    return to(first >= 1 && first <= HIGHEST_ADDRESS ? first : 1);
  }

  private ModbusRequest to(int unit) {
    return new ModbusRequest(unit, rules.function(), rules.start(), rules.count());
  }

  /** Two or more registers of codes are no chance; one alone may be a tenth below zero. */
  private boolean holdNoSensorCodes(List<Integer> words) {
    List<Integer> read = new ArrayList<>();
    for (ReadingRule rule : readings) {
      read.addAll(registersOf(rule, words));
    }
    return read.size() > 1 && NO_SENSOR.containsAll(read);
  }

  private static List<Integer> registersOf(ReadingRule rule, List<Integer> words) {
    int from = Integer.parseInt(rule.at());
    return words.subList(from, from + rule.encoding().orElseThrow().type().registers());
  }

  private Cells cells(List<Integer> words, UnaryOperator<Encoding> order) {
    Map<String, Cell> cells = new HashMap<>();
    for (ReadingRule rule : readings) {
      double value = order.apply(rule.encoding().orElseThrow()).ofWords(registersOf(rule, words));
      cells.put(
          rule.place(),
          Double.isNaN(value)
              ? new Cell.Unusable("no value (NaN in the registers)")
              : new Cell.Figure(value, Double.toString(value)));
    }
    return place -> cells.getOrDefault(place, Cell.ABSENT);
  }

  private List<Opened.Otherwise> otherwise(List<Integer> words) {
    List<Integer> swapped =
        words.stream().map(word -> (word & 0xFF) << 8 | (word >> 8 & 0xFF)).toList();
    List<Opened.Otherwise> all = new ArrayList<>();
    all.add(
        new Opened.Otherwise(
            "byte-swapped words suspected", cells(swapped, UnaryOperator.identity())));
    boolean wide =
        readings.stream().anyMatch(rule -> rule.encoding().orElseThrow().type().registers() > 1);
    if (wide) {
      all.add(
          new Opened.Otherwise(
              "the other order of words suspected", cells(words, Encoding::otherOrder)));
      all.add(
          new Opened.Otherwise(
              "byte-swapped words in the other order suspected",
              cells(swapped, Encoding::otherOrder)));
    }
    return all;
  }
}

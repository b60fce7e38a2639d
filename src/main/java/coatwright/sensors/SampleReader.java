package coatwright.sensors;

import coatwright.quantity.StrictNumber;
import coatwright.sensors.PayloadRules.Condition;
import coatwright.sensors.mqtt.TopicFilter;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/** Turns one record of a payload into values in the house's units, by the source's rules. */
final class SampleReader {
  private static final double SAME_C = 0.3;
  private static final String SENSOR = "sensor";

  private final PayloadRules rules;
  private final List<String> filters;
  private final List<String> captures;
  private final TimeReader time;

  SampleReader(SourceMapping mapping) {
    this.rules = mapping.payload();
    this.time = new TimeReader(rules.time());
    List<String> all = new ArrayList<>();
    List<String> names = List.of();
    if (mapping.transport().orElse(null) instanceof Transport.Mqtt mqtt) {
      all.addAll(mqtt.filters());
      names = mqtt.captures();
    }
    this.captures = names;
    rules.readings().forEach(rule -> rule.filter().ifPresent(all::add));
    this.filters = List.copyOf(all);
  }

  /** The sample; empty when the record does not meet the conditions or maps to nothing. */
  Optional<Sample> read(Cells cells, RawReading raw) {
    if (!rules.when().stream().allMatch(condition -> meets(cells, condition))) {
      return Optional.empty();
    }
    Optional<String> sensor = sensor(cells);
    Sample sample =
        new Sample(
            sensor,
            sensor.orElseGet(() -> caught(raw.channel())),
            time.read(cells, raw.arrivedAt()),
            carriesTime(cells),
            rules.sequenceAt().flatMap(cells::text),
            rules
                .batteryLow()
                .flatMap(low -> cells.text(low.at()).map(t -> same(t, low.equals()))));
    for (ReadingRule rule : rules.readings()) {
      if (rule.filter().map(filter -> TopicFilter.matches(filter, raw.channel())).orElse(true)) {
        read(rule, cells, sample);
      }
    }
    return sample.isEmpty() && sample.refused().isEmpty() ? Optional.empty() : Optional.of(sample);
  }

  /** A pack of records may leave its time out, and then means now. */
  private boolean carriesTime(Cells cells) {
    return rules.time().isPresent()
        && (rules.kind() != PayloadKind.SENML || cells.text(SenmlForm.TIME).isPresent());
  }

  private static boolean meets(Cells cells, Condition condition) {
    return cells.text(condition.at()).map(text -> same(text, condition.equals())).orElse(false);
  }

  private static boolean same(String found, String wanted) {
    OptionalDouble a = StrictNumber.parse(found, '.');
    OptionalDouble b = StrictNumber.parse(wanted, '.');
    return (a.isPresent() && b.isPresent())
        ? Double.compare(a.getAsDouble(), b.getAsDouble()) == 0
        : found.equals(wanted);
  }

  private Optional<String> sensor(Cells cells) {
    List<String> names =
        rules.sensorAt().stream().map(cells::text).flatMap(Optional::stream).toList();
    return names.isEmpty() ? Optional.empty() : Optional.of(String.join("/", names));
  }

  /** What the topic's wildcards caught tells sensors of one filter apart. */
  private String caught(String channel) {
    for (String filter : filters) {
      Optional<List<String>> levels = TopicFilter.captures(filter, channel);
      if (levels.isPresent()) {
        int sensor = captures.indexOf(SENSOR);
        return sensor >= 0 && sensor < levels.get().size()
            ? levels.get().get(sensor)
            : String.join("/", levels.get());
      }
    }
    return "";
  }

  private void read(ReadingRule rule, Cells cells, Sample sample) {
    Cell cell = cells.at(rule.place());
    if (cell instanceof Cell.Absent) {
      return;
    }
    if (cell instanceof Cell.Unusable no) {
      sample.refuse(rule.quantity(), no.reason());
      return;
    }
    if (cell instanceof Cell.Other other) {
      boolean simple = other.what().equals("null") || other.what().startsWith("boolean");
      sample.refuse(
          rule.quantity(),
          simple
              ? other.what() + " where a number is due; the sender's own word for no value?"
              : "mapped member is not a number but an %s; name the place inside it"
                  .formatted(other.what()));
      return;
    }
    String text = cell instanceof Cell.Words words ? words.text() : ((Cell.Figure) cell).text();
    OptionalDouble number =
        cell instanceof Cell.Figure figure
            ? OptionalDouble.of(figure.value())
            : StrictNumber.parse(text, rule.decimal());
    Optional<String> missing = Missing.listed(rule, text, number);
    if (missing.isPresent()) {
      sample.refuse(rule.quantity(), missing.get());
    } else if (number.isEmpty()) {
      sample.refuse(rule.quantity(), notANumber(text, rule.decimal()));
    } else if (Double.isInfinite(number.getAsDouble())) {
      sample.refuse(rule.quantity(), "not finite: " + text);
    } else {
      put(rule, cells, sample, rule.scaled(number.getAsDouble()));
    }
  }

  private static String notANumber(String text, char decimal) {
    if (text.isEmpty()) {
      return "empty text where a number is due";
    }
    Optional<String> word = Missing.word(text);
    if (word.isPresent()) {
      return word.get();
    }
    char other = decimal == '.' ? ',' : '.';
    return StrictNumber.parse(text, other).isPresent()
        ? "not a number: \"%s\" has a decimal %s; if that is right, set decimal: \"%s\""
            .formatted(text, other == ',' ? "comma" : "point", other)
        : "not a number: \"%s\"".formatted(Text.shortened(text));
  }

  /** A humidity that is far too large for a fraction and would do as percent. */
  private static boolean isPercent(Quantity quantity, double sent) {
    return quantity == Quantity.RELATIVE_HUMIDITY && sent > 2 && sent <= 103;
  }

  private void put(ReadingRule rule, Cells cells, Sample sample, double sent) {
    Unit unit = rule.unit();
    Optional<String> written = rule.unitAt().flatMap(cells::text);
    if (written.isPresent()) {
      Unit meant = rule.unitMap().get(written.get());
      if (meant == null) {
        sample.refuse(
            rule.quantity(), "unit text \"%s\" is not in unitMap".formatted(written.get()));
        return;
      }
      if (!Objects.equals(meant, unit) && rules.kind() != PayloadKind.SENML) {
        sample.flag("unit_from_payload");
      }
      unit = meant;
    }
    double value = unit.toHouse(rule.quantity(), sent);
    Optional<String> missing = Missing.converted(rule, unit, sent);
    if (missing.isPresent()) {
      sample.refuse(rule.quantity(), missing.get());
      return;
    }
    if (unit == Unit.ONE && isPercent(rule.quantity(), sent)) {
      sample.hold(
          "%s %s looks like percent where a fraction is configured; set unit: \"%%\" if it is"
              .formatted(rule.quantity(), Text.plain(sent)));
    }
    if (!Double.isFinite(value)) {
      sample.refuse(rule.quantity(), "not finite once converted");
      return;
    }
    OptionalDouble already = sample.value(rule.quantity());
    if (already.isPresent()) {
      if (Math.abs(already.getAsDouble() - value) > SAME_C) {
        sample.flag("two_values_disagree");
      }
      return;
    }
    sample.put(rule.quantity(), value);
  }
}

package coatwright.sensors;

import coatwright.sensors.mqtt.TopicFilter;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/**
 * Reads which quantities a payload holds, and where: {@code readings}, {@code filters}, {@code
 * records}.
 */
final class RuleReader {
  private static final Set<String> WORDS =
      Set.of("quantity", "at", "unit", "unitAt", "unitMap", "decimal", "missing", "scale");
  private static final Set<String> ENCODING_WORDS = Set.of("type", "words");
  private static final Set<String> RECORD_WORDS =
      Set.of("name", "quantity", "unit", "missing", "scale");
  private static final Pattern OFFSET = Pattern.compile("^\\d{1,3}$");
  private static final BigDecimal FINEST = new BigDecimal("1e-9");
  private static final BigDecimal COARSEST = new BigDecimal("1e9");

  private final Fields fields;
  private final PayloadKind kind;
  private final Chip chip;
  private final Optional<SafePattern> pattern;
  private final OptionalInt registers;
  private final boolean inBytes;
  private final String layout;

  RuleReader(
      Fields fields,
      PayloadKind kind,
      Chip chip,
      Optional<SafePattern> pattern,
      Optional<ModbusRules> modbus,
      String layout) {
    this.fields = fields;
    this.kind = kind;
    this.chip = chip;
    this.pattern = pattern;
    this.registers = modbus.map(rules -> OptionalInt.of(rules.count())).orElse(OptionalInt.empty());
    this.inBytes = layout.equals(ByteLayout.FIXED);
    this.layout = layout;
  }

  List<ReadingRule> read() {
    if (kind == PayloadKind.WORD) {
      List.of("readings", "filters").forEach(this::refuseInWord);
      return List.of();
    }
    if (kind == PayloadKind.SENML) {
      return records();
    }
    if (fields.has("records")) {
      fields.fault("records", "belongs to payload senml", "take it out");
    }
    List<ReadingRule> rules = new ArrayList<>();
    for (Fields entry : fields.groups("readings")) {
      rules.add(rule(entry, Optional.empty()));
    }
    fields
        .named("filters")
        .forEach(
            (filter, value) -> {
              if (value instanceof Setting.MapOf inner) {
                TopicFilter.faultOf(filter)
                    .ifPresent(fault -> fields.fault("filters", filter + " " + fault, "narrow it"));
                rules.add(rule(fields.inside("filters " + filter, inner), Optional.of(filter)));
              } else {
                fields.fault("filters", filter + " names no reading", "write its quantity");
              }
            });
    return rules;
  }

  private void refuseInWord(String word) {
    if (fields.has(word)) {
      fields.fault(word, "has no place in payload word", "take it out; a word is no reading");
    }
  }

  private ReadingRule rule(Fields entry, Optional<String> filter) {
    entry.refuseUnknown(
        WORDS, ENCODING_WORDS, "belongs to payload modbus-rtu or layout fixed", encoded());
    Quantity quantity = quantity(entry);
    String at = at(entry);
    Unit unit = unit(entry, quantity);
    entry.text("unitAt").ifPresent(place -> Places.check(entry, "unitAt", place, kind, false));
    return new ReadingRule(
        filter,
        quantity,
        at,
        encoding(entry, at),
        scale(entry),
        unit,
        entry.text("unitAt"),
        unitMap(entry, quantity),
        decimal(entry),
        missing(entry, quantity, unit));
  }

  private boolean encoded() {
    return kind == PayloadKind.MODBUS_RTU || inBytes;
  }

  private String at(Fields entry) {
    String at = entry.text("at").orElse("");
    if (kind == PayloadKind.NUMBER && !at.isEmpty()) {
      entry.fault("at", "has no meaning where the payload is one number", "take it out");
    } else if (kind != PayloadKind.NUMBER && at.isEmpty()) {
      entry.fault("at", "is missing", "write the place of the value");
    }
    if (kind == PayloadKind.JSON) {
      Places.check(entry, "at", at, kind, false);
    }
    if (kind == PayloadKind.HEX && !inBytes) {
      ByteLayout.of(layout, List.of())
          .map(ByteLayout::places)
          .filter(places -> !at.isEmpty() && !places.contains(at))
          .ifPresent(
              places ->
                  entry.fault("at", "is no place of this layout", Nearest.remedy(at, places)));
    }
    pattern
        .filter(known -> !at.isEmpty() && !known.hasGroup(at))
        .ifPresent(
            known -> entry.fault("at", "is no group of the pattern", "name it (?<" + at + ">...)"));
    return at;
  }

  /** How the number lies in registers or bytes; its order is asked for where it has one. */
  private Optional<Encoding> encoding(Fields entry, String at) {
    if (!encoded()) {
      return Optional.empty();
    }
    boolean offset = OFFSET.matcher(at).matches();
    if (!offset && !at.isEmpty()) {
      entry.fault("at", "is no offset", "count from 0, the first of those read");
    }
    Predicate<Encoding.Type> fits = type -> inBytes || type.bytes() > 1;
    List<String> known =
        List.of(Encoding.Type.values()).stream().filter(fits).map(Encoding.Type::toString).toList();
    String word = entry.requiredText("type", "write one of " + String.join(", ", known));
    Optional<Encoding.Type> type = Words.among(Encoding.Type.values(), word).filter(fits);
    if (type.isEmpty()) {
      if (!word.isEmpty()) {
        entry.fault("type", "is not a type used here", Nearest.remedy(word, known));
      }
      return Optional.empty();
    }
    boolean several = inBytes ? type.get().bytes() > 1 : type.get().registers() > 1;
    if (offset && registers.isPresent()) {
      int end = Integer.parseInt(at) + type.get().registers();
      if (end > registers.getAsInt()) {
        entry.fault("at", "lies behind the registers read", "set count to at least " + end);
        return Optional.empty();
      }
    }
    return offset
        ? Optional.of(new Encoding(type.get(), highFirst(entry, several)))
        : Optional.empty();
  }

  private static boolean highFirst(Fields entry, boolean needed) {
    String remedy = "write high-first or low-first, as the maker's sheet says";
    Optional<String> word =
        needed ? Optional.of(entry.requiredText("words", remedy)) : entry.text("words");
    boolean known = word.map(w -> w.equals("high-first") || w.equals("low-first")).orElse(true);
    if (!known && !word.orElse("").isEmpty()) {
      entry.fault("words", "is no order", remedy);
    }
    return !word.orElse("").equals("low-first");
  }

  private static BigDecimal scale(Fields entry) {
    Optional<Setting> found = entry.raw("scale");
    if (found.isEmpty()) {
      return BigDecimal.ONE;
    }
    if (found.get() instanceof Setting.Num number
        && number.value().abs().compareTo(FINEST) >= 0
        && number.value().abs().compareTo(COARSEST) <= 0) {
      return number.value();
    }
    entry.fault("scale", "is not a factor", "write a number such as 0.1");
    return BigDecimal.ONE;
  }

  private static Quantity quantity(Fields entry) {
    String word = entry.requiredText("quantity", Words.remedy("", Quantity.values()));
    Optional<Quantity> quantity = Words.among(Quantity.values(), word);
    if (quantity.isEmpty() && !word.isEmpty()) {
      entry.fault("quantity", "is not a quantity", Words.remedy(word, Quantity.values()));
    }
    return quantity.orElse(Quantity.AIR_TEMPERATURE);
  }

  private static Unit unit(Fields entry, Quantity quantity) {
    String codes = "write one of " + Unit.codesFor(quantity);
    return known(entry, quantity, entry.requiredText("unit", codes));
  }

  private static Unit known(Fields entry, Quantity quantity, String code) {
    Optional<Unit> unit = Unit.of(code).filter(known -> known.fits(quantity));
    if (unit.isEmpty() && !code.isEmpty()) {
      entry.fault(
          "unit", "is not a UCUM code for " + quantity, "write one of " + Unit.codesFor(quantity));
    }
    return unit.orElse(Unit.codesFor(quantity).get(0));
  }

  private static Map<String, Unit> unitMap(Fields entry, Quantity quantity) {
    Map<String, Unit> map = new HashMap<>();
    entry
        .named("unitMap")
        .forEach(
            (text, value) -> {
              Optional<Unit> unit =
                  Fields.scalar(value).flatMap(Unit::of).filter(known -> known.fits(quantity));
              if (unit.isPresent()) {
                map.put(text, unit.get());
              } else {
                entry.fault(
                    "unitMap",
                    text + " is not given a UCUM code for " + quantity,
                    "write one of " + Unit.codesFor(quantity));
              }
            });
    if (entry.has("unitAt") && map.isEmpty()) {
      entry.fault("unitMap", "is missing", "say what the texts at unitAt mean");
    }
    return map;
  }

  private static char decimal(Fields entry) {
    String text = entry.text("decimal").orElse(".");
    if (!text.equals(".") && !text.equals(",")) {
      entry.fault("decimal", "is not a decimal mark", "write \".\" or \",\"");
      return '.';
    }
    return text.charAt(0);
  }

  /** The source's own list, the presets it names, and the one that goes with its chip. */
  private List<String> missing(Fields entry, Quantity quantity, Unit unit) {
    List<String> missing = new ArrayList<>();
    for (String text : entry.texts("missing")) {
      Optional<MissingPreset> preset = MissingPreset.of(text);
      if (preset.isPresent()) {
        missing.addAll(preset.get().in(quantity, unit));
      } else {
        missing.add(text);
      }
    }
    MissingPreset.of(chip).ifPresent(preset -> missing.addAll(preset.in(quantity, unit)));
    return missing;
  }

  private List<ReadingRule> records() {
    for (String word : List.of("readings", "filters")) {
      if (fields.has(word)) {
        fields.fault(
            word,
            "has no place in payload senml",
            "name the records: [{name: t, quantity: air-temperature}]");
      }
    }
    List<ReadingRule> rules = new ArrayList<>();
    for (Fields entry : fields.groups("records")) {
      entry.refuseUnknown(RECORD_WORDS);
      String name = entry.requiredText("name", "write the record's name, as n says");
      Quantity quantity = quantity(entry);
      Map<String, Unit> units = new HashMap<>(SenmlForm.unitsOf(quantity));
      Optional<String> given = entry.text("unit");
      Unit unit =
          given.map(code -> known(entry, quantity, code)).orElse(Unit.codesFor(quantity).get(0));
      given.ifPresent(code -> units.put(SenmlForm.UNNAMED, unit));
      rules.add(
          new ReadingRule(
              Optional.empty(),
              quantity,
              name,
              Optional.empty(),
              scale(entry),
              unit,
              Optional.of(SenmlForm.unitOf(name)),
              units,
              '.',
              missing(entry, quantity, unit)));
    }
    return rules;
  }
}

package coatwright.sensors;

import coatwright.sensors.PayloadRules.Condition;
import coatwright.sensors.mqtt.TopicFilter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads how a source's payloads are taken apart. */
final class PayloadReader {
  private static final Set<String> LATER_KINDS = Set.of("senml", "hex", "modbus-rtu", "word");
  private static final String KINDS = "use number, json, pattern or columns";
  private static final Set<String> RULE_WORDS =
      Set.of("quantity", "at", "unit", "unitAt", "unitMap", "decimal", "missing");

  private final Fields fields;
  private final Chip chip;

  PayloadReader(Fields fields, Chip chip) {
    this.fields = fields;
    this.chip = chip;
  }

  /** True, and a fault noted, when the payload is of a form that comes with a later version. */
  static boolean isOfLaterVersion(Fields fields) {
    boolean later = fields.text("payload").map(LATER_KINDS::contains).orElse(false);
    if (later) {
      fields.fault("payload", "is not in this version", KINDS);
    }
    return later;
  }

  PayloadRules read() {
    PayloadKind kind = kind();
    Optional<SafePattern> pattern = pattern(kind);
    List<ReadingRule> readings = readings(kind, pattern);
    if (readings.isEmpty()) {
      fields.fault("readings", "is missing", "name at least one quantity, its place and its unit");
    }
    return new PayloadRules(
        kind,
        charset(),
        pattern,
        separator(kind),
        fields.flag("header", false),
        pointerOrNothing("each", kind),
        when(kind),
        sensorAt(kind),
        readings,
        time(kind),
        pointerOrNothing("sequenceAt", kind),
        stripNul(),
        batteryLow());
  }

  private PayloadKind kind() {
    String word = fields.requiredText("payload", KINDS);
    Optional<PayloadKind> kind = Words.among(PayloadKind.values(), word);
    if (kind.isEmpty() && !word.isEmpty()) {
      fields.fault("payload", "is not a form of payload", KINDS);
    }
    return kind.orElse(PayloadKind.NUMBER);
  }

  private Charset charset() {
    Optional<String> name = fields.text("charset");
    try {
      return name.isEmpty() ? StandardCharsets.UTF_8 : Charset.forName(name.get());
    } catch (IllegalArgumentException e) {
      fields.fault("charset", "is not a known charset", "write utf-8 or iso-8859-1");
      return StandardCharsets.UTF_8;
    }
  }

  private Optional<SafePattern> pattern(PayloadKind kind) {
    if (kind != PayloadKind.PATTERN) {
      return Optional.empty();
    }
    String text = fields.requiredText("pattern", "write the line's form with named groups");
    List<String> rules = new ArrayList<>();
    Optional<SafePattern> pattern = text.isEmpty() ? Optional.empty() : SafePattern.of(text, rules);
    rules.forEach(rule -> fields.fault("pattern", rule, "write it more plainly"));
    return pattern;
  }

  private char separator(PayloadKind kind) {
    String text = fields.text("separator").orElse(",");
    if (text.length() != 1 || "0123456789.+-\"\r\n".contains(text)) {
      fields.fault("separator", "is not one separating character", "write , or ; or a tab");
      return ',';
    }
    if (kind != PayloadKind.COLUMNS && fields.has("separator")) {
      fields.fault("separator", "belongs to payload columns", "take it out");
    }
    return text.charAt(0);
  }

  private Optional<String> pointerOrNothing(String word, PayloadKind kind) {
    Optional<String> text = fields.text(word);
    text.ifPresent(at -> checkPlace(fields, word, at, kind, word.equals("each")));
    if (word.equals("each") && text.isPresent() && kind != PayloadKind.JSON) {
      fields.fault(word, "belongs to payload json", "take it out");
    }
    return text;
  }

  private static void checkPlace(
      Fields at, String word, String place, PayloadKind kind, boolean starAllowed) {
    if (kind != PayloadKind.JSON) {
      return;
    }
    boolean pointer = place.isEmpty() || place.startsWith("/");
    boolean star = place.endsWith("/*");
    if (!pointer || (star && !starAllowed) || (starAllowed && !star)) {
      at.fault(
          word,
          starAllowed ? "is not a JSON Pointer ending in /*" : "is not a JSON Pointer",
          starAllowed ? "write it like /probes/*" : "write it like /climate/temperature");
    }
  }

  private List<Condition> when(PayloadKind kind) {
    List<Condition> conditions = new ArrayList<>();
    for (Fields entry : fields.groups("when")) {
      entry.refuseUnknown(Set.of("at", "equals"), Set.of());
      String at = entry.requiredText("at", "write the place to look at");
      checkPlace(entry, "at", at, kind, false);
      conditions.add(
          new Condition(at, entry.requiredText("equals", "write what must stand there")));
    }
    return conditions;
  }

  private List<String> sensorAt(PayloadKind kind) {
    List<String> places = fields.texts("sensorAt");
    places.forEach(place -> checkPlace(fields, "sensorAt", place, kind, false));
    return places;
  }

  private List<ReadingRule> readings(PayloadKind kind, Optional<SafePattern> pattern) {
    List<ReadingRule> rules = new ArrayList<>();
    for (Fields entry : fields.groups("readings")) {
      rules.add(rule(entry, kind, pattern, Optional.empty()));
    }
    fields
        .named("filters")
        .forEach(
            (filter, value) -> {
              if (value instanceof Setting.MapOf inner) {
                TopicFilter.faultOf(filter)
                    .ifPresent(fault -> fields.fault("filters", filter + " " + fault, "narrow it"));
                rules.add(
                    rule(
                        fields.inside("filters " + filter, inner),
                        kind,
                        pattern,
                        Optional.of(filter)));
              } else {
                fields.fault("filters", filter + " names no reading", "write its quantity");
              }
            });
    return rules;
  }

  private ReadingRule rule(
      Fields entry, PayloadKind kind, Optional<SafePattern> pattern, Optional<String> filter) {
    entry.refuseUnknown(RULE_WORDS, Set.of("type", "words", "scale"));
    Quantity quantity = quantity(entry);
    String at = entry.text("at").orElse("");
    if (kind == PayloadKind.NUMBER && !at.isEmpty()) {
      entry.fault("at", "has no meaning where the payload is one number", "take it out");
    } else if (kind != PayloadKind.NUMBER && at.isEmpty()) {
      entry.fault("at", "is missing", "write the place of the value");
    }
    checkPlace(entry, "at", at, kind, false);
    pattern
        .filter(known -> !at.isEmpty() && !known.hasGroup(at))
        .ifPresent(
            known -> entry.fault("at", "is no group of the pattern", "name it (?<" + at + ">...)"));
    Unit unit = unit(entry, quantity);
    return new ReadingRule(
        filter,
        quantity,
        at,
        unit,
        entry.text("unitAt"),
        unitMap(entry, quantity),
        decimal(entry),
        missing(entry, quantity, unit));
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
    String code = entry.requiredText("unit", codes);
    Optional<Unit> unit = Unit.of(code).filter(known -> known.fits(quantity));
    if (unit.isEmpty() && !code.isEmpty()) {
      entry.fault("unit", "is not a UCUM code for " + quantity, codes);
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

  private List<String> missing(Fields entry, Quantity quantity, Unit unit) {
    List<String> missing = new ArrayList<>(entry.texts("missing"));
    if (quantity == Quantity.SURFACE_TEMPERATURE && chip.oneWireProbe()) {
      missing.add(Double.toString(unit.fromCelsius(Missing.ONE_WIRE_POWER_ON_C)));
      missing.add(Double.toString(unit.fromCelsius(Missing.ONE_WIRE_GONE_C)));
    }
    return missing;
  }

  private Optional<TimeRule> time(PayloadKind kind) {
    Optional<Fields> group = fields.group("time");
    if (group.isEmpty()) {
      return Optional.empty();
    }
    Fields inner = group.get();
    inner.refuseUnknown(Set.of("at", "form", "zone", "trust"), Set.of());
    String at = inner.requiredText("at", "write where the time stands");
    checkPlace(inner, "at", at, kind, false);
    List<TimeRule.Form> forms = new ArrayList<>();
    for (String word : inner.texts("form")) {
      Optional<TimeRule.Form> form = Words.among(TimeRule.Form.values(), word);
      if (form.isEmpty()) {
        inner.fault("form", "is not a form of time", Words.remedy(word, TimeRule.Form.values()));
      }
      form.ifPresent(forms::add);
    }
    if (!inner.has("form")) {
      forms.add(TimeRule.Form.RFC3339);
    }
    Optional<ZoneId> zone = zone(inner);
    if (forms.contains(TimeRule.Form.LOCAL) && zone.isEmpty()) {
      inner.fault("zone", "is missing", "name the sender's zone, like Europe/Berlin");
    }
    return Optional.of(new TimeRule(at, forms, zone, trustsPayload(inner)));
  }

  private static boolean trustsPayload(Fields inner) {
    String trust = inner.text("trust").orElse("payload");
    if (!trust.equals("payload") && !trust.equals("arrival")) {
      inner.fault("trust", "is neither payload nor arrival", "write payload or arrival");
    }
    return trust.equals("payload");
  }

  private static Optional<ZoneId> zone(Fields inner) {
    Optional<String> name = inner.text("zone");
    try {
      return name.map(ZoneId::of);
    } catch (DateTimeException e) {
      inner.fault("zone", "is not a time zone", "write it like Europe/Berlin");
      return Optional.empty();
    }
  }

  private boolean stripNul() {
    String word = fields.text("nul").orElse("refuse");
    if (!word.equals("refuse") && !word.equals("strip")) {
      fields.fault("nul", "is neither refuse nor strip", "write refuse or strip");
    }
    return word.equals("strip");
  }

  /** Written either as a group with its value, or as two words side by side. */
  private Optional<Condition> batteryLow() {
    if (fields.raw("batteryLowAt").filter(Setting.MapOf.class::isInstance).isPresent()) {
      Optional<Fields> group = fields.group("batteryLowAt");
      group.ifPresent(inner -> inner.refuseUnknown(Set.of("at", "lowWhen"), Set.of()));
      return group.map(
          inner ->
              new Condition(
                  inner.requiredText("at", "write where it stands"),
                  inner.requiredText("lowWhen", "write the value that means low")));
    }
    return fields
        .text("batteryLowAt")
        .map(
            at ->
                new Condition(
                    at, fields.requiredText("lowWhen", "write the value that means low")));
  }
}

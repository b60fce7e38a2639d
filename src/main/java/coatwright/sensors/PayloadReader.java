package coatwright.sensors;

import coatwright.sensors.PayloadRules.Condition;
import coatwright.sensors.SourceMapping.Placing;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Reads how a source's payloads are taken apart. */
final class PayloadReader {
  private static final List<String> TIME_FORMS =
      List.of("rfc3339", "epoch-s", "epoch-auto", "local");
  private static final String KINDS =
      "use number, json, pattern, columns, senml, hex, modbus-rtu or word";

  private final Fields fields;
  private final Placing placing;
  private final boolean live;

  /**
   * @param live asks for all that a source of the running house needs
   */
  PayloadReader(Fields fields, Placing placing, boolean live) {
    this.fields = fields;
    this.placing = placing;
    this.live = live;
  }

  PayloadRules read() {
    PayloadKind kind = kind();
    Optional<SafePattern> pattern = pattern(kind);
    Optional<ModbusRules> modbus =
        kind == PayloadKind.MODBUS_RTU ? new ModbusReader(fields, live).read() : Optional.empty();
    Optional<String> layout = layout(kind);
    RuleReader rules =
        new RuleReader(fields, kind, placing.chip(), pattern, modbus, layout.orElse(""));
    List<ReadingRule> readings = rules.read();
    Optional<ByteLayout> bytes = layout.flatMap(text -> ByteLayout.of(text, readings));
    if (layout.isPresent() && bytes.isEmpty()) {
      fields.fault("layout", "is not a layout described in the docs", ByteLayout.REMEDY);
    }
    List<ReadingRule> all = withUsual(readings, bytes);
    boolean needed = kind != PayloadKind.WORD;
    if (all.isEmpty() && needed && !fields.has("records")) {
      fields.fault(
          kind == PayloadKind.SENML ? "records" : "readings",
          "is missing",
          kind == PayloadKind.SENML
              ? "name the records to read: [{name: t, quantity: air-temperature}]"
              : "name at least one quantity, its place and its unit");
    }
    return new PayloadRules(
        kind,
        new PayloadRules.FormRules(
            pattern,
            separator(kind),
            fields.flag("header", false),
            bytes,
            hexAt(kind),
            modbus,
            presence(kind)),
        charset(),
        pointerOrNothing("each", kind),
        when(kind),
        sensorAt(kind),
        all,
        time(kind),
        pointerOrNothing("sequenceAt", kind),
        stripNul(),
        batteryLow(bytes));
  }

  private Optional<String> layout(PayloadKind kind) {
    if (kind != PayloadKind.HEX) {
      belongsTo("layout", PayloadKind.HEX);
      return Optional.empty();
    }
    String text = fields.requiredText("layout", ByteLayout.REMEDY);
    return text.isEmpty() ? Optional.empty() : Optional.of(text);
  }

  private List<ReadingRule> withUsual(List<ReadingRule> readings, Optional<ByteLayout> layout) {
    return readings.isEmpty() && layout.isPresent() && !layout.get().places().isEmpty()
        ? ByteLayout.usual(placing.role())
        : readings;
  }

  private String hexAt(PayloadKind kind) {
    if (kind != PayloadKind.HEX) {
      belongsTo("at", PayloadKind.HEX);
      return "";
    }
    String at = fields.text("at").orElse("");
    Places.check(fields, "at", at, kind, false);
    if (at.isEmpty() && fields.has("each")) {
      fields.fault("at", "is missing", "say where in each member the digits stand");
    }
    return at;
  }

  private Optional<Transport.Presence> presence(PayloadKind kind) {
    if (kind != PayloadKind.WORD) {
      return Optional.empty();
    }
    if (!fields.has("presence")) {
      fields.fault("presence", "is missing", "write {present: [online], absent: [offline]}");
    }
    return TransportReader.presence(fields, false);
  }

  private void belongsTo(String word, PayloadKind kind) {
    if (fields.has(word)) {
      fields.fault(word, "belongs to payload " + kind, "take it out");
    }
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
    if (kind != PayloadKind.COLUMNS) {
      belongsTo("separator", PayloadKind.COLUMNS);
    }
    return text.charAt(0);
  }

  private Optional<String> pointerOrNothing(String word, PayloadKind kind) {
    Optional<String> text = fields.text(word);
    text.ifPresent(at -> Places.check(fields, word, at, kind, word.equals("each")));
    if (word.equals("each") && text.isPresent() && !kind.ofJson()) {
      fields.fault(word, "belongs to payload json or hex", "take it out");
    }
    return text;
  }

  private List<Condition> when(PayloadKind kind) {
    List<Condition> conditions = new ArrayList<>();
    for (Fields entry : fields.groups("when")) {
      entry.refuseUnknown(Set.of("at", "equals"));
      String at = entry.requiredText("at", "write the place to look at");
      Places.check(entry, "at", at, kind, false);
      conditions.add(
          new Condition(at, entry.requiredText("equals", "write what must stand there")));
    }
    return conditions;
  }

  private List<String> sensorAt(PayloadKind kind) {
    if (kind == PayloadKind.SENML && !fields.has("sensorAt")) {
      return List.of(SenmlForm.deviceAt());
    }
    List<String> places = fields.texts("sensorAt");
    places.forEach(place -> Places.check(fields, "sensorAt", place, kind, false));
    return places;
  }

  private Optional<TimeRule> time(PayloadKind kind) {
    Optional<Fields> group = fields.group("time");
    if (kind == PayloadKind.SENML) {
      return Optional.of(senmlTime(group));
    }
    if (group.isEmpty()) {
      return Optional.empty();
    }
    Fields inner = group.get();
    inner.refuseUnknown(Set.of("at", "form", "zone", "trust"));
    String at = inner.requiredText("at", "write where the time stands");
    Places.check(inner, "at", at, kind, false);
    List<TimeRule.Form> forms = new ArrayList<>();
    for (String word : inner.texts("form")) {
      Optional<TimeRule.Form> form =
          Words.among(TimeRule.Form.values(), word).filter(known -> known != TimeRule.Form.SENML);
      if (form.isEmpty()) {
        inner.fault("form", "is not a form of time", Nearest.remedy(word, TIME_FORMS));
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

  /** A pack carries its time in its own fields; only whether it is trusted can be said. */
  private static TimeRule senmlTime(Optional<Fields> group) {
    group.ifPresent(inner -> inner.refuseUnknown(Set.of("trust")));
    return new TimeRule(
        SenmlForm.TIME,
        List.of(TimeRule.Form.SENML),
        Optional.empty(),
        group.map(PayloadReader::trustsPayload).orElse(true));
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
  private Optional<Condition> batteryLow(Optional<ByteLayout> layout) {
    if (layout.map(ByteLayout::places).orElse(List.of()).contains(ServiceDataLayout.LOW)) {
      return Optional.of(new Condition(ServiceDataLayout.LOW, "1"));
    }
    if (fields.raw("batteryLowAt").filter(Setting.MapOf.class::isInstance).isPresent()) {
      Optional<Fields> group = fields.group("batteryLowAt");
      group.ifPresent(inner -> inner.refuseUnknown(Set.of("at", "lowWhen")));
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

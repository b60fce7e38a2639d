package coatwright.sensors;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads one plain phrase of a recording's context into what it tells; see {@link ToldBefore}. */
final class Phrase {
  private static final String NUMBER = "[+-]?\\d+(?:\\.\\d+)?";
  private static final String SPAN =
      "(?<size>\\d+(?:\\.\\d+)?)"
          + " ?(?<of>milliseconds?|ms|seconds?|secs?|s|minutes?|mins?|hours?|hrs?|h|days?|d)\\b";
  private static final Pattern A_SPAN = Pattern.compile("(?<![\\w.-])" + SPAN);
  private static final Pattern BACK =
      Pattern.compile(
          "(?<![\\w.-])" + SPAN + " ?(?:earlier|before|ago|previously|prior|back)\\b:?");
  private static final Pattern AHEAD =
      Pattern.compile(
          "(?<![\\w.-])"
              + SPAN
              + " ?(?:later|after|afterwards|on)\\b:?|\\bafter "
              + SPAN.replace("<size>", "<size2>").replace("<of>", "<of2>"));
  private static final Pattern ONE_BEFORE =
      Pattern.compile("^(?:the )?(?:previous|last|before(?: that)?|earlier)\\b:?");
  private static final Pattern ONE_AFTER =
      Pattern.compile("^(?:the )?(?:next|then|following|after that|afterwards)\\b:?");
  private static final Pattern VALUE =
      Pattern.compile(
          "(?:\\b(?<name>air temperature|temperature|temp|t|relative humidity|humidity|hum|rh)"
              + " ?(?:=|:|of|was|is|at|reads?)? ?)?(?<![\\w.-])(?<number>"
              + NUMBER
              + ")(?![\\w.]*\\d)(?: ?(?<unit>°c|cel|c|% ?rh|%|percent|k)(?![\\w°]))?");
  private static final Set<String> FILLERS =
      Set.of(
          "was", "is", "at", "read", "reads", "reading", "value", "values", "it", "the", "and",
          "same", "sensor", "sample", "message", "showed", "shows", "pair", "stood", "still",
          "with", "of", "to", "a", "in", "said", "gave", "sent", "this", "itself", "again", "came");
  private static final Pattern OTHERS =
      Pattern.compile(
          "\\b(?:neighbou?rs?|second sensor|third sensor|others?|another sensor|sensors? [a-z]"
              + "|reference)\\b");
  private static final Pattern NAMED_SENSOR = Pattern.compile("\\bsensors? [a-z0-9]\\b(?! ?%)");
  private static final Pattern REQUEST =
      Pattern.compile("^(?:request|asked|sent)(?: was)?:? ((?:[0-9a-f]{2}[ :-]?)+)$");
  private static final Pattern NEWEST =
      Pattern.compile("\\b(?:newest|latest|last)\\b.*?(\\d{4}-\\d\\d-\\d\\dt\\S+z)");
  private static final Pattern HEADER =
      Pattern.compile(
          "^(?:the |first |earlier |previous )*header(?: line)?(?: was| is| seen| read)?:? (.+)$",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern OPENED =
      Pattern.compile(
          "^(?:(?:serial )?(?:port|line|device) )?(?:just )?opened "
              + SPAN
              + " (?:ago|before|earlier)$");
  private static final Pattern JUST_OPENED =
      Pattern.compile("^(?:(?:serial )?(?:port|line|device) )(?:was )?just opened$");
  private static final Pattern BURST =
      Pattern.compile("(\\d+) (?:\\w+ )?messages?\\b.*\\b(?:with)?in (?:the last |about )?" + SPAN);
  private static final Pattern IDENTICAL =
      Pattern.compile(
          "\\b(?:identical|same|equal|duplicate)\\b.*\\b(?:payload|message|bytes|text|seq\\w*)\\b");
  private static final Pattern NUMBERED =
      Pattern.compile("\\b(?:seq|sequence|counter)(?: number)?:? ?(\\d{1,18})\\b");
  private static final Pattern SAME =
      Pattern.compile(
          "\\b(?:same|identical|unchanged|frozen|constant|no change|not changed|repeated)\\b.*\\b"
              + "(?:for|in|over|since|within|during) (?:the last )?"
              + SPAN);
  private static final Pattern CLIMBED =
      Pattern.compile(
          "\\b(?:climb|rose|ris|went up|increas)\\w*(?: up)? from (?<foot>"
              + NUMBER
              + ") ?%?(?: ?(?:to|through) (?<top>"
              + NUMBER
              + ") ?%?)?(?: rh)? (?:in|over|within|during) (?:the last )?"
              + SPAN);
  private static final Pattern LASTING =
      Pattern.compile(
          "(?:\\b(?<name>temperature|humidity|rh|t) ?(?:=|:|at|of|stands at|was)?"
              + " ?)?(?<![\\w.-])(?<value>"
              + NUMBER
              + ")(?: ?(?:%|c))?(?: ?/ ?(?<second>"
              + NUMBER
              + ") ?%?)? (?:for|since) (?:the last )?"
              + SPAN
              + "(?<rest>.*)$");
  private static final Pattern MOVED =
      Pattern.compile(
          "\\b(?:moved|rose|fell|changed|went)(?: by)? (" + NUMBER + ") ?(?:k|c|°c)\\b");
  private static final Duration QUICK = Duration.ofMillis(200);

  /** Something told. */
  sealed interface Told {
    /**
     * Values the sensor itself gave.
     *
     * @param offset from now; negative is earlier
     */
    record Own(Optional<String> what, OptionalDouble first, OptionalDouble second, Duration offset)
        implements Told {}

    /** The humidity climbed. */
    record Climbed(double footPct, OptionalDouble topPct, Duration over) implements Told {}

    /**
     * A value stood for so long.
     *
     * @param movedK how far temperature moved meanwhile, where told
     */
    record Lasting(
        Optional<String> what,
        double first,
        OptionalDouble second,
        Duration span,
        OptionalDouble movedK)
        implements Told {}

    /** The same payload came so long ago, and since. */
    record Same(Duration ago) implements Told {}

    /** A message of that number came before. */
    record Numbered(String number) implements Told {}

    /** So many messages just before. */
    record Burst(int count) implements Told {}

    /** The newest stored reading is of that time. */
    record Newest(Instant at) implements Told {}

    /** A header line went by. */
    record Header(String line) implements Told {}

    /** The port was opened so long ago. */
    record Opened(Duration ago) implements Told {}

    /** What other sensors of the room say. */
    record Others(List<Other> each) implements Told {
      public Others {
        each = List.copyOf(each);
      }
    }

    /** The bytes that were sent to ask. */
    record Request(List<Integer> bytes) implements Told {
      public Request {
        bytes = List.copyOf(bytes);
      }
    }
  }

  /** What one other sensor says. */
  record Other(OptionalDouble t, double rh) {}

  private record Found(Optional<Boolean> humidity, double value) {}

  private final String original;
  private final String text;

  private Phrase(String phrase) {
    this.original = phrase.strip();
    this.text =
        original
            .toLowerCase(Locale.ROOT)
            .replace('\u2212', '-')
            .replace('\u2013', '-')
            .replaceAll("\\s+", " ")
            .replaceAll("[.!]$", "");
  }

  /** What the phrase tells; empty when it is for the reader only. */
  static Optional<Told> read(String phrase) {
    return new Phrase(phrase).told();
  }

  private Optional<Told> told() {
    return request()
        .or(this::newest)
        .or(this::header)
        .or(this::opened)
        .or(this::burst)
        .or(this::identical)
        .or(this::numbered)
        .or(this::others)
        .or(this::same)
        .or(this::climbed)
        .or(this::lasting)
        .or(this::own);
  }

  private Optional<Told> request() {
    Matcher match = REQUEST.matcher(text);
    return match.matches()
        ? HexForm.bytes(match.group(1).strip()).map(Told.Request::new)
        : Optional.empty();
  }

  private Optional<Told> newest() {
    Matcher match = NEWEST.matcher(text);
    if (!match.find()) {
      return Optional.empty();
    }
    try {
      return Optional.of(new Told.Newest(Instant.parse(match.group(1).toUpperCase(Locale.ROOT))));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  private Optional<Told> header() {
    Matcher match = HEADER.matcher(original);
    return match.matches() ? Optional.of(new Told.Header(match.group(1))) : Optional.empty();
  }

  private Optional<Told> opened() {
    Matcher match = OPENED.matcher(text);
    if (match.matches()) {
      return Optional.of(new Told.Opened(span(match)));
    }
    return JUST_OPENED.matcher(text).matches()
        ? Optional.of(new Told.Opened(Duration.ZERO))
        : Optional.empty();
  }

  private Optional<Told> burst() {
    Matcher match = BURST.matcher(text);
    if (!match.find()) {
      return Optional.empty();
    }
    // A count with more digits than any flood is as good as the most.
    int count = match.group(1).length() > 6 ? 1_000_000 : Integer.parseInt(match.group(1));
    boolean quick = span(match).compareTo(QUICK.multipliedBy(Math.max(1, count))) < 0;
    return quick ? Optional.of(new Told.Burst(count)) : Optional.empty();
  }

  private Optional<Told> identical() {
    Matcher back = BACK.matcher(text);
    return IDENTICAL.matcher(text).find() && back.find()
        ? Optional.of(new Told.Same(span(back)))
        : Optional.empty();
  }

  private Optional<Told> numbered() {
    Matcher match = NUMBERED.matcher(text);
    return match.find() ? Optional.of(new Told.Numbered(match.group(1))) : Optional.empty();
  }

  private Optional<Told> same() {
    Matcher match = SAME.matcher(text);
    return match.find() ? Optional.of(new Told.Same(span(match))) : Optional.empty();
  }

  private Optional<Told> climbed() {
    Matcher match = CLIMBED.matcher(text);
    return match.find()
        ? Optional.of(
            new Told.Climbed(
                Double.parseDouble(match.group("foot")), number(match, "top"), span(match)))
        : Optional.empty();
  }

  private Optional<Told> lasting() {
    Matcher match = LASTING.matcher(text);
    if (!match.find()) {
      return Optional.empty();
    }
    Matcher moved = MOVED.matcher(match.group("rest"));
    return Optional.of(
        new Told.Lasting(
            Optional.ofNullable(match.group("name")).map(Phrase::quantity),
            Double.parseDouble(match.group("value")),
            number(match, "second"),
            span(match),
            moved.find()
                ? OptionalDouble.of(Double.parseDouble(moved.group(1)))
                : OptionalDouble.empty()));
  }

  private Optional<Told> others() {
    if (!OTHERS.matcher(text).find()) {
      return Optional.empty();
    }
    String rest = A_SPAN.matcher(NAMED_SENSOR.matcher(text).replaceAll("sensor")).replaceAll(" ");
    List<Other> others = new ArrayList<>();
    OptionalDouble t = OptionalDouble.empty();
    List<Found> found = values(rest);
    boolean slashed = found.size() == 2 && rest.matches(".*\\d ?/ ?\\d.*");
    for (int i = 0; i < found.size(); i++) {
      Found each = found.get(i);
      boolean isT = each.humidity().isPresent() ? !each.humidity().get() : slashed && i == 0;
      if (isT) {
        t = OptionalDouble.of(each.value());
      } else {
        others.add(new Other(t, each.value()));
        t = OptionalDouble.empty();
      }
    }
    return others.isEmpty() ? Optional.empty() : Optional.of(new Told.Others(others));
  }

  private Optional<Told> own() {
    Matcher back = BACK.matcher(text);
    if (back.find()) {
      return own(back.replaceFirst(" "), span(back).negated());
    }
    Matcher ahead = AHEAD.matcher(text);
    if (ahead.find()) {
      Duration span =
          ahead.group("size") != null
              ? span(ahead)
              : span(ahead.group("size2"), ahead.group("of2"));
      return own(ahead.replaceFirst(" "), span);
    }
    Duration usual = Duration.ofMinutes(1);
    Matcher before = ONE_BEFORE.matcher(text);
    if (before.find()) {
      return own(before.replaceFirst(" "), usual.negated());
    }
    Matcher after = ONE_AFTER.matcher(text);
    return after.find() ? own(after.replaceFirst(" "), usual) : Optional.empty();
  }

  /** One value or a pair, and nothing else that could mean another sensor or another thing. */
  private static Optional<Told> own(String rest, Duration offset) {
    List<Found> found = values(rest);
    if (found.isEmpty() || found.size() > 2 || !isOnlyValues(rest)) {
      return Optional.empty();
    }
    Found first = found.get(0);
    if (found.size() == 1) {
      return Optional.of(
          new Told.Own(
              first.humidity().map(rh -> rh ? "humidity" : "temperature"),
              OptionalDouble.of(first.value()),
              OptionalDouble.empty(),
              offset));
    }
    Found second = found.get(1);
    boolean swapped = first.humidity().orElse(false) || !second.humidity().orElse(true);
    return Optional.of(
        new Told.Own(
            Optional.empty(),
            OptionalDouble.of(swapped ? second.value() : first.value()),
            OptionalDouble.of(swapped ? first.value() : second.value()),
            offset));
  }

  private static List<Found> values(String text) {
    List<Found> found = new ArrayList<>();
    Matcher value = VALUE.matcher(text);
    while (value.find()) {
      String name = value.group("name");
      String unit = value.group("unit");
      Optional<Boolean> humidity = Optional.empty();
      if (name != null) {
        humidity = Optional.of(quantity(name).equals("humidity"));
      } else if (unit != null) {
        humidity = Optional.of(unit.startsWith("%") || unit.equals("percent"));
      }
      found.add(new Found(humidity, Double.parseDouble(value.group("number"))));
    }
    return found;
  }

  private static boolean isOnlyValues(String text) {
    String rest = VALUE.matcher(text).replaceAll(" ").replaceAll("[/,;:|&()]", " ").strip();
    return rest.isEmpty() || FILLERS.containsAll(List.of(rest.split(" +")));
  }

  private static String quantity(String name) {
    return name.contains("hum") || name.equals("rh") ? "humidity" : "temperature";
  }

  private static OptionalDouble number(Matcher match, String group) {
    String text = match.group(group);
    return text == null ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(text));
  }

  private static Duration span(Matcher match) {
    return span(match.group("size"), match.group("of"));
  }

  private static Duration span(String size, String of) {
    double millis =
        switch (of.charAt(0)) {
          case 'm' -> of.startsWith("mi") && !of.startsWith("mill") ? 60_000 : 1;
          case 's' -> 1_000;
          case 'h' -> 3_600_000;
          default -> 86_400_000;
        };
    return Duration.ofMillis(Math.round(Double.parseDouble(size) * millis));
  }
}

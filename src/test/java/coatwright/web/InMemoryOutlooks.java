package coatwright.web;

import coatwright.climate.Climate;
import coatwright.climate.RoomAir;
import coatwright.climate.WoodPoint;
import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.Journal;
import coatwright.journal.PartPath;
import coatwright.outlook.BrushingWindows;
import coatwright.outlook.Due;
import coatwright.outlook.NextCoat;
import coatwright.outlook.Outlook;
import coatwright.outlook.OutlookRequest;
import coatwright.outlook.Outlooks;
import coatwright.outlook.SessionOutlook;
import coatwright.outlook.WindowQuestion;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;

/** Outlooks by a rule of thumb on the spread at the wood, enough to move a page. */
final class InMemoryOutlooks implements Outlooks {
  private final Climate climate;
  private final Journal journal;
  private final List<Due> due = new CopyOnWriteArrayList<>();
  private final List<Consumer<List<Due>>> listeners = new CopyOnWriteArrayList<>();
  final AtomicInteger asked = new AtomicInteger();

  /** What a test has the session's outlook say instead. */
  volatile UnaryOperator<Outlook> judged = UnaryOperator.identity();

  InMemoryOutlooks(Climate climate, Journal journal) {
    this.climate = climate;
    this.journal = journal;
  }

  void expect(List<Due> milestones) {
    due.clear();
    due.addAll(milestones);
    listeners.forEach(listener -> listener.accept(milestones));
  }

  @Override
  public Outlook of(OutlookRequest request) {
    return byRule(request.airTempC() - 4, request.airTempC(), request.rhPct());
  }

  @Override
  public Outlook ofPart(NextCoat next, Instant now) {
    return session(next.room().orElse(climate.rooms().get(0)), now).outlook();
  }

  /** Fine from two to six hours ahead, and so again on the days after. */
  @Override
  public BrushingWindows windows(WindowQuestion question, Instant now) {
    Instant hour = now.truncatedTo(java.time.temporal.ChronoUnit.HOURS);
    List<BrushingWindows.Hour> hours = new ArrayList<>();
    List<BrushingWindows.Window> windows = new ArrayList<>();
    for (int h = 1; h <= 71; h++) {
      boolean fine = h % 24 >= 2 && h % 24 < 6;
      hours.add(
          new BrushingWindows.Hour(
              hour.plus(Duration.ofHours(h)), fine ? 0.9 - h / 1000.0 : 0.25, h > 24));
    }
    for (int day = 0; day < 3; day++) {
      windows.add(
          new BrushingWindows.Window(
              hour.plus(Duration.ofHours(24L * day + 2)),
              hour.plus(Duration.ofHours(24L * day + 6)),
              0.9 - (24 * day + 5) / 1000.0,
              day > 0));
    }
    return new BrushingWindows(
        question.room().orElse(climate.rooms().get(0)),
        question.finish().orElse("shellac-pale"),
        "Pale shellac, dewaxed",
        question.part().map(PartPath::toString),
        question.jar(),
        now,
        now.plus(Duration.ofDays(3)),
        "own errors",
        false,
        0.8,
        true,
        "From 23:00 to 03:00: in 90 of 100 courses the air may take, a coat may be brushed.",
        hours,
        windows);
  }

  @Override
  public Optional<SessionOutlook> sessionIfDoubtHolds(String room, Instant now) {
    return Optional.empty();
  }

  @Override
  public SessionOutlook session(String room, Instant now) {
    asked.incrementAndGet();
    RoomAir air = climate.now(room);
    List<Entry> coats =
        journal.coats().stream()
            .filter(entry -> entry.body() instanceof Coat coat && coat.room().equals(room))
            .toList();
    Optional<Coat> last =
        coats.isEmpty() ? Optional.empty() : Optional.of((Coat) coats.get(coats.size() - 1).body());
    boolean open = last.isPresent() && last.get().start().isAfter(now.minus(Duration.ofHours(4)));
    Outlook outlook =
        air.air()
            .map(
                point ->
                    byRule(
                        point.dewPointC(),
                        air.wood().map(WoodPoint::woodTempC).orElse(point.airTempC()),
                        point.rhPct()))
            .map(judged)
            .orElseGet(InMemoryOutlooks::noAir);
    return new SessionOutlook(
        room,
        open,
        "shellac-pale",
        "Pale shellac, dewaxed",
        open ? last.map(Coat::jar) : Optional.empty(),
        open ? last.map(coat -> coat.part().toString()) : Optional.empty(),
        "brush",
        line(outlook),
        outlook.summary() == Outlook.Summary.HOLD_OFF
            ? Optional.of(
                now.plus(Duration.ofMinutes(140)).truncatedTo(java.time.temporal.ChronoUnit.HOURS))
            : Optional.empty(),
        outlook.summary() == Outlook.Summary.HOLD_OFF
            ? OptionalDouble.of(0.72)
            : OptionalDouble.empty(),
        air.age()
            .map(age -> OptionalDouble.of(age.toMillis() / 1000.0))
            .orElse(OptionalDouble.empty()),
        air.wood().map(wood -> "probe on the wood"),
        outlook);
  }

  private static String line(Outlook outlook) {
    return switch (outlook.summary()) {
      case BRUSH -> "Brush: the film should stay clear and dry as usual";
      case TAKE_CARE -> "Take care: the film may cloud";
      case HOLD_OFF -> "Hold off: the film would cloud";
      case CANT_TELL -> "Can't tell: no current reading of this room's air";
    };
  }

  private static Outlook noAir() {
    return new Outlook(
        Outlook.Summary.CANT_TELL,
        "No current reading of this room's air: the last is over 10 min old.",
        "no-air",
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        List.of(),
        OptionalDouble.empty(),
        List.of(),
        List.of("Look at the sensor's battery and its line in the list of sensors."),
        List.of(),
        new Outlook.Model("fixture", "1"));
  }

  private static Outlook byRule(double dewPointC, double woodTempC, double rhPct) {
    double spreadK = woodTempC - dewPointC - 0.5;
    Outlook.CloudingLevel level =
        spreadK < 2.5
            ? Outlook.CloudingLevel.LIKELY
            : spreadK < 6 ? Outlook.CloudingLevel.POSSIBLE : Outlook.CloudingLevel.NONE_EXPECTED;
    Outlook.Summary summary =
        switch (level) {
          case LIKELY -> Outlook.Summary.HOLD_OFF;
          case POSSIBLE -> Outlook.Summary.TAKE_CARE;
          case NONE_EXPECTED -> Outlook.Summary.BRUSH;
        };
    String spread = String.format(Locale.ROOT, "%.1f K", spreadK);
    return new Outlook(
        summary,
        "The wood stands " + spread + " above the dew point, its uncertainty taken off.",
        "clouding",
        Optional.empty(),
        Optional.of(
            new Outlook.Clouding(
                level,
                OptionalDouble.of(spreadK - 5.2),
                OptionalDouble.of(woodTempC - 5.2),
                dewPointC,
                spreadK,
                OptionalDouble.of(0.24 * rhPct),
                OptionalDouble.of(16.4),
                OptionalDouble.of(rhPct / 60),
                Optional.of(spreadK > 2.5),
                spreadK > 2.5 ? OptionalDouble.of(18) : OptionalDouble.empty(),
                OptionalDouble.of(140))),
        Optional.of(
            new Outlook.Drying(
                rhPct > 75 ? Outlook.DryingLevel.SLOW : Outlook.DryingLevel.USUAL,
                rhPct > 75 ? 0.5 : 0.92,
                OptionalDouble.of(11),
                OptionalDouble.of(52),
                OptionalDouble.empty(),
                OptionalDouble.of(9.5),
                Optional.of(
                    new Outlook.Range(
                        OptionalDouble.of(2.4), OptionalDouble.of(4.1), OptionalDouble.of(7.6))))),
        Optional.of(new Outlook.OpenTime(Outlook.OpenTimeLevel.COMFORTABLE, 4.2, 3.4, 5.3)),
        Optional.empty(),
        List.of(),
        OptionalDouble.of(14),
        List.of(
            "Cut taken as 180 g/L (1.5 lb), with its usual spread; a dried-sample test would tell.",
            "Wet film taken as 75 µm, as usual with a brush."),
        summary == Outlook.Summary.BRUSH
            ? List.of()
            : List.of(
                "Warm the wood by 3 K before the jar is opened, with the heater off and out of the"
                    + " room before brushing.",
                "Dry the room to 52 %: about 0.11 L of water out of this air."),
        List.of(
            "Switches, heaters, fans and phones can ignite spirit vapour unless rated for it.",
            "Read the safety data sheet and follow local code."),
        new Outlook.Model("fixture", "1"));
  }

  @Override
  public List<Due> due(Optional<String> piece) {
    return due.stream()
        .filter(one -> piece.isEmpty() || PartPath.parse(one.part()).piece().equals(piece.get()))
        .toList();
  }

  @Override
  public void refresh(Instant now, String reason) {
    listeners.forEach(listener -> listener.accept(List.copyOf(due)));
  }

  @Override
  public void onDue(Consumer<List<Due>> listener) {
    listeners.add(listener);
  }
}

package coatwright.web;

import coatwright.climate.RoomAir;
import coatwright.climate.SourceState;
import coatwright.climate.SourceStatus;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.LongAdder;

/** Whether the daemon lives, whether it can do its work and why not, and figures for monitoring. */
final class Vitals {
  private final WebRooms rooms;
  private final Events events;
  private final ShopJson json;
  private final LongAdder requests = new LongAdder();
  private final LongAdder failures = new LongAdder();

  /** Answering at all is being alive; {@code reasons} says what keeps it from being ready. */
  record Health(boolean alive, boolean ready, List<String> reasons) {}

  Vitals(WebRooms rooms, Events events, ShopJson json) {
    this.rooms = rooms;
    this.events = events;
    this.json = json;
  }

  void addTo(RoutesConfig routes) {
    routes.get("/health", ctx -> answer(ctx, 200, health()));
    routes.get(
        "/health/ready",
        ctx -> {
          Health health = health();
          answer(ctx, health.ready() ? 200 : 503, health);
        });
    routes.get(
        "/metrics",
        ctx -> ctx.contentType("text/plain; version=0.0.4; charset=utf-8").result(figures()));
    routes.after(
        ctx -> {
          requests.increment();
          if (ctx.statusCode() >= 500) {
            failures.increment();
          }
        });
  }

  private void answer(Context ctx, int status, Health health) {
    ctx.status(status).contentType("application/json; charset=utf-8").result(json.line(health));
  }

  private Health health() {
    List<String> reasons = new ArrayList<>();
    for (SourceStatus source : rooms.sources().get()) {
      if (source.state() != SourceState.CURRENT) {
        reasons.add(
            source.source()
                + " is "
                + source.state()
                + source.trouble().map(trouble -> ": " + trouble).orElse(""));
      }
    }
    boolean someAir = rooms.climate().rooms().isEmpty();
    for (String room : rooms.climate().rooms()) {
      RoomAir air = rooms.climate().now(room);
      someAir |= air.air().isPresent();
      if (air.air().isEmpty()) {
        reasons.add(
            "no believable air in "
                + room
                + air.trouble().map(trouble -> ": " + trouble).orElse(""));
      }
    }
    for (MirrorView mirror : rooms.mirrors().get()) {
      if (!mirror.fine()) {
        reasons.add("mirror " + mirror.name() + ": " + mirror.says());
      }
    }
    Optional<String> unwritten = rooms.storeTrouble().get();
    unwritten.ifPresent(reasons::add);
    return new Health(true, someAir && unwritten.isEmpty(), reasons);
  }

  private String figures() {
    Sheet sheet = new Sheet();
    sheet.head(
        "coatwright_readings_total", "counter", "Inputs of a source, by what became of them.");
    List<SourceStatus> sources = rooms.sources().get();
    for (SourceStatus source : sources) {
      String name = "source=\"" + escaped(source.source()) + "\"";
      sheet.row("coatwright_readings_total", name + ",verdict=\"accepted\"", source.accepted());
      sheet.row("coatwright_readings_total", name + ",verdict=\"heldBack\"", source.heldBack());
      sheet.row("coatwright_readings_total", name + ",verdict=\"refused\"", source.refused());
    }
    sheet.head("coatwright_source_current", "gauge", "1 while a source gives readings in time.");
    for (SourceStatus source : sources) {
      sheet.row(
          "coatwright_source_current",
          "source=\"" + escaped(source.source()) + "\",state=\"" + source.state() + "\"",
          source.state() == SourceState.CURRENT ? 1 : 0);
    }
    airFigures(sheet);
    sheet.head("coatwright_warnings_open", "gauge", "Warnings that have not ended.");
    sheet.row("coatwright_warnings_open", "", rooms.watch().open().size());
    mirrorFigures(sheet);
    sheet.head("coatwright_entries_total", "counter", "Lines of the journal.");
    sheet.row("coatwright_entries_total", "", rooms.journal().entries().size());
    sheet.head("coatwright_web_listeners", "gauge", "Open event streams.");
    sheet.row("coatwright_web_listeners", "", events.listening());
    sheet.head("coatwright_web_requests_total", "counter", "Requests answered.");
    sheet.row("coatwright_web_requests_total", "", requests.sum());
    sheet.head("coatwright_web_failures_total", "counter", "Requests answered with a 5xx.");
    sheet.row("coatwright_web_failures_total", "", failures.sum());
    Runtime machine = Runtime.getRuntime();
    sheet.head("coatwright_heap_used_bytes", "gauge", "Heap in use.");
    sheet.row("coatwright_heap_used_bytes", "", machine.totalMemory() - machine.freeMemory());
    return sheet.toString();
  }

  private void mirrorFigures(Sheet sheet) {
    List<MirrorView> mirrors = rooms.mirrors().get();
    if (mirrors.isEmpty()) {
      return;
    }
    sheet.head("coatwright_mirror_sent_total", "counter", "Points a mirror's server has taken.");
    mirrors.forEach(one -> sheet.row("coatwright_mirror_sent_total", label(one), one.sent()));
    sheet.head("coatwright_mirror_waiting", "gauge", "What is still to be sent to a mirror.");
    mirrors.forEach(one -> sheet.row("coatwright_mirror_waiting", label(one), one.waiting()));
    sheet.head("coatwright_mirror_parked", "gauge", "Points a mirror's server refused for good.");
    mirrors.forEach(one -> sheet.row("coatwright_mirror_parked", label(one), one.parked()));
    sheet.head(
        "coatwright_mirror_last_success_seconds", "gauge", "When a mirror last sent, Unix time.");
    mirrors.forEach(
        one ->
            one.lastSuccess()
                .ifPresent(
                    at ->
                        sheet.row(
                            "coatwright_mirror_last_success_seconds",
                            label(one),
                            at.getEpochSecond())));
    sheet.head(
        "coatwright_mirror_behind_seconds", "gauge", "How long a mirror has been behind; 0 = not.");
    mirrors.forEach(
        one ->
            sheet.row(
                "coatwright_mirror_behind_seconds",
                label(one),
                one.behindSince()
                    .map(since -> Duration.between(since, rooms.clock().instant()).toSeconds())
                    .orElse(0L)));
  }

  private static String label(MirrorView mirror) {
    return "mirror=\"" + escaped(mirror.name()) + "\"";
  }

  private void airFigures(Sheet sheet) {
    List<RoomAir> airs = rooms.climate().rooms().stream().map(rooms.climate()::now).toList();
    sheet.head("coatwright_air_temperature_celsius", "gauge", "Air temperature of a room.");
    airs.forEach(
        air ->
            air.air()
                .ifPresent(
                    now ->
                        sheet.row(
                            "coatwright_air_temperature_celsius", label(air), now.airTempC())));
    sheet.head("coatwright_air_humidity_percent", "gauge", "Relative humidity of a room.");
    airs.forEach(
        air ->
            air.air()
                .ifPresent(
                    now -> sheet.row("coatwright_air_humidity_percent", label(air), now.rhPct())));
    sheet.head("coatwright_dew_point_celsius", "gauge", "Dew point of a room's air.");
    airs.forEach(
        air ->
            air.air()
                .ifPresent(
                    now -> sheet.row("coatwright_dew_point_celsius", label(air), now.dewPointC())));
  }

  private static String label(RoomAir air) {
    return "room=\"" + escaped(air.room()) + "\"";
  }

  private static String escaped(String text) {
    return text.replace("\\", "\\\\").replace("\"", "\\\"").replace("\n", "\\n");
  }

  /** The text the figures are written on. */
  private static final class Sheet {
    private final StringBuilder text = new StringBuilder(2_000);

    void head(String name, String type, String help) {
      text.append("# HELP ").append(name).append(' ').append(help).append('\n');
      text.append("# TYPE ").append(name).append(' ').append(type).append('\n');
    }

    void row(String name, String labels, long value) {
      write(name, labels, Long.toString(value));
    }

    void row(String name, String labels, double value) {
      write(name, labels, String.format(Locale.ROOT, "%.4f", value));
    }

    private void write(String name, String labels, String value) {
      text.append(name);
      if (!labels.isEmpty()) {
        text.append('{').append(labels).append('}');
      }
      text.append(' ').append(value).append('\n');
    }

    @Override
    public String toString() {
      return text.toString();
    }
  }
}

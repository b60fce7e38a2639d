package coatwright.cli;

import coatwright.mix.Cut;
import coatwright.mix.Solution;
import coatwright.mix.VapourLimits;
import coatwright.mix.VapourLoad;
import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import coatwright.quantity.Show;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Vapour of the coats just laid, as an average over the room, against the published limits. */
@Command(
    name = "vapour",
    description = {
      "Solvent vapour as an average over the room, as a share of the lower explosive limit and of",
      "the published exposure limit. Say what evaporates: solvent, or a mixture and its cut.",
      "Without --air-changes nobody can tell the share; only the closed room is told."
    },
    footer = {
      "",
      "Example: coatwright jar vapour --room 28m3 --spirit 300mL --air-changes 2/h --over 1h",
      "         coatwright jar vapour --room 1000ft3 --mixture 1pt --cut 1.5lb"
    })
final class JarVapour implements Callable<Integer> {
  private static final double SEA_LEVEL_PA = 101_325;
  private static final String CANT_TELL = "can't tell";

  @Option(
      names = "--room",
      required = true,
      paramLabel = "V",
      description = "Volume of the room: 28m3, 1000ft3.")
  String room = "";

  @Option(names = "--spirit", paramLabel = "V", description = "Spirit evaporated: 300mL, 10floz.")
  @Nullable String spirit;

  @Option(names = "--mixture", paramLabel = "V", description = "Or mixture laid: 350mL ...")
  @Nullable String mixture;

  @Option(names = "--cut", paramLabel = "C", description = "... of this cut: 1.5lb.")
  @Nullable String cut;

  @Option(names = "--strength", paramLabel = "S", description = "Of the spirit. Default: 95%%.")
  @Nullable String strength;

  @Option(
      names = "--solvent",
      paramLabel = "NAME",
      description = "What the spirit is: ethanol (default), 2-propanol, 1-butanol, acetone ...")
  String solvent = "ethanol";

  @Option(
      names = "--methanol",
      paramLabel = "P",
      description = "Share of it that is methanol, from its data sheet: 5%%.")
  @Nullable String methanol;

  @Option(
      names = "--air-changes",
      paramLabel = "N",
      description = "Room volumes of outdoor air an hour: 0.5/h.")
  @Nullable String airChanges;

  @Option(
      names = "--over",
      paramLabel = "TIME",
      description = "Time it evaporates in. Default: 1h.")
  String over = "1h";

  @Option(names = "--temp", paramLabel = "T", description = "Air of the room. Default: 20C.")
  String temp = "20C";

  @Mixin Help help = new Help();
  private final Shared shared;

  JarVapour(Shared shared) {
    this.shared = shared;
  }

  /** One solvent's vapour. */
  record Vapour(
      String solvent,
      double liquidMl,
      double lelPct,
      double exposureLimitPpm,
      String exposureLimitWhose,
      OptionalDouble shortTimeLimitPpm,
      double closedRoomPpm,
      OptionalDouble peakPpm,
      OptionalDouble eightHourPpm) {}

  /**
   * The answer.
   *
   * @param share {@code room average}, or {@code can't tell} where the airing is unknown; then the
   *     shares are absent
   */
  record Answer(
      double roomM3,
      double airTempC,
      OptionalDouble airChangesPerH,
      double overH,
      List<Vapour> vapours,
      double closedRoomLelSharePct,
      double closedRoomExposureSharePct,
      String share,
      OptionalDouble lelSharePct,
      OptionalDouble exposureSharePct,
      OptionalDouble shortTimeSharePct) {}

  @Override
  public Integer call() {
    VapourLoad load =
        new VapourLoad(
            parts(),
            Quantities.roomVolumeM3("--room", room),
            Quantities.temperatureC("--temp", temp),
            SEA_LEVEL_PA);
    Duration time = Quantities.duration("--over", over);
    double overH = time.toMillis() / 3.6e6;
    Optional<VapourLoad.Airing> airing =
        Optional.ofNullable(airChanges)
            .map(n -> new VapourLoad.Airing(Quantities.airChangesPerH("--air-changes", n), overH));
    Answer answer = answer(load, airing, overH);
    if (shared.json) {
      shared.printJson(answer);
    } else {
      print(load, airing, answer);
    }
    return 0;
  }

  private static Answer answer(VapourLoad load, Optional<VapourLoad.Airing> airing, double overH) {
    return new Answer(
        load.roomM3(),
        load.airTempC(),
        airing.map(a -> OptionalDouble.of(a.airChangesPerH())).orElse(OptionalDouble.empty()),
        overH,
        load.parts().stream().map(part -> vapour(load, airing, part)).toList(),
        load.closedLelSharePct(),
        load.closedExposureSharePct(),
        airing.isPresent() ? "room average" : CANT_TELL,
        share(airing, load::lelSharePct),
        share(airing, load::exposureSharePct),
        hasShortLimit(load) ? share(airing, load::shortTimeSharePct) : OptionalDouble.empty());
  }

  private static OptionalDouble share(
      Optional<VapourLoad.Airing> airing, ToDoubleFunction<VapourLoad.Airing> of) {
    return airing.isPresent()
        ? OptionalDouble.of(of.applyAsDouble(airing.get()))
        : OptionalDouble.empty();
  }

  private static boolean hasShortLimit(VapourLoad load) {
    return load.parts().stream().anyMatch(part -> part.solvent().shortTimePpm().isPresent());
  }

  private List<VapourLoad.Part> parts() {
    double ml = liquidMl() * JarWords.strengthPct(strength) / 100;
    VapourLimits main =
        VapourLimits.named(solvent)
            .orElseThrow(
                () ->
                    RefusedInput.of(
                        "--solvent \"" + solvent + "\"",
                        "no published limits are kept for it",
                        "use one of "
                            + Arrays.stream(VapourLimits.values())
                                .map(VapourLimits::solvent)
                                .collect(Collectors.joining(", "))
                            + "; others are on their safety data sheet"));
    if (methanol == null) {
      return List.of(new VapourLoad.Part(main, ml));
    }
    double share = Quantities.percent("--methanol", methanol) / 100;
    List<VapourLoad.Part> parts = new ArrayList<>();
    parts.add(new VapourLoad.Part(main, ml * (1 - share)));
    parts.add(new VapourLoad.Part(VapourLimits.METHANOL, ml * share));
    return parts;
  }

  private double liquidMl() {
    if ((spirit == null) == (mixture == null)) {
      throw RefusedInput.of(
          "jar vapour",
          spirit == null ? "it needs what evaporates" : "what evaporates is told twice",
          "give --spirit 300mL, or --mixture 350mL with --cut 1.5lb");
    }
    if (spirit != null) {
      return Quantities.volumeMl("--spirit", spirit);
    }
    if (cut == null) {
      throw RefusedInput.of(
          "--mixture", "how much of it is spirit depends on the cut", "add --cut 1.5lb");
    }
    Cut known = JarWords.cut("--cut", cut);
    return Solution.ofVolume(
            known,
            Quantities.volumeMl("--mixture", mixture == null ? "" : mixture),
            JarWords.strengthPct(strength))
        .spiritMl();
  }

  private static Vapour vapour(
      VapourLoad load, Optional<VapourLoad.Airing> airing, VapourLoad.Part part) {
    return new Vapour(
        part.solvent().solvent(),
        part.liquidMl(),
        part.solvent().lelPct(),
        part.solvent().eightHourPpm(),
        part.solvent().eightHourWhose(),
        part.solvent().shortTimePpm(),
        load.closedPpm(part),
        airing.map(a -> OptionalDouble.of(load.peakPpm(part, a))).orElse(OptionalDouble.empty()),
        airing
            .map(a -> OptionalDouble.of(load.eightHourPpm(part, a)))
            .orElse(OptionalDouble.empty()));
  }

  private void print(VapourLoad load, Optional<VapourLoad.Airing> airing, Answer answer) {
    JarText text = new JarText(shared);
    airing.ifPresentOrElse(
        a ->
            text.figure(
                "Room average: at its highest %s of the lower explosive limit, over eight hours %s of the exposure limit"
                    .formatted(
                        JarText.share(load.lelSharePct(a)),
                        JarText.share(load.exposureSharePct(a)))),
        () ->
            text.figure(
                "Room average: can't tell, the air changes are unknown (--air-changes 0.5/h)"));
    for (Vapour one : answer.vapours()) {
      printOne(text, one);
    }
    answer
        .shortTimeSharePct()
        .ifPresent(
            pct ->
                text.line(
                    "for short",
                    "the highest is %s of the short-time limit".formatted(JarText.share(pct))));
    text.line(
        "nothing leaving",
        "%s of the lower explosive limit, %s of the exposure limit, evenly mixed"
            .formatted(
                JarText.share(answer.closedRoomLelSharePct()),
                JarText.share(answer.closedRoomExposureSharePct())));
    text.from(
        "evenly mixed air of %s, from clean air; limits: the lowest of IEC 60079-20-1, NFPA 497 and"
                .formatted(text.room(load.roomM3()))
            + " NIOSH, and the lower of OSHA PEL and NIOSH REL; several vapours are added");
    text.mind(
        "this is an average and no pass: vapour is richest at jar, film and floor, and the exposure"
            + " limit is reached long before the explosive one");
    text.mind(
        "screen, charger, switch, heater, dehumidifier and fan can ignite solvent vapour unless"
            + " rated for it; how far to keep them and how to air the room, the safety data sheet"
            + " and the local code say");
    if (load.parts().stream().anyMatch(part -> part.solvent().passesSkin())) {
      text.mind("one of these passes the skin");
    } else if (solvent.equals("ethanol")) {
      text.mind(
          "some denatured alcohols hold methanol, whose limit is a fifth of ethanol's; its data"
              + " sheet tells the share for --methanol");
    }
    text.end();
  }

  private static void printOne(JarText text, Vapour one) {
    String limits =
        "limits %s %% by volume and %s ppm (%s)%s"
            .formatted(
                Show.fixed(one.lelPct(), 1),
                Show.fixed(one.exposureLimitPpm(), 0),
                one.exposureLimitWhose(),
                one.shortTimeLimitPpm().isPresent()
                    ? ", %s ppm for short"
                        .formatted(Show.fixed(one.shortTimeLimitPpm().getAsDouble(), 0))
                    : "");
    String found =
        one.peakPpm().isPresent()
            ? "highest %s ppm, eight-hour average %s ppm; "
                .formatted(
                    Show.fixed(one.peakPpm().getAsDouble(), 0),
                    Show.fixed(one.eightHourPpm().orElse(0), 0))
            : "";
    text.line(one.solvent(), found + limits);
  }
}

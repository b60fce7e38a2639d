package coatwright.cli;

import coatwright.mix.Cut;
import coatwright.mix.FlowCup;
import coatwright.mix.Solution;
import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import coatwright.quantity.Show;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** How thick a liquid is, by the time a flow cup takes to run out. */
@Command(
    name = "cup",
    description = {
      "Viscosity from a flow cup. Cups: iso3 iso4 iso5 iso6 din4 ford2 ford3 ford4 zahn1 to zahn5.",
      "With the cut its density is known too, and so the viscosity in mPa s."
    },
    footer = {"", "Example: coatwright jar cup --cup din4 --time 32s --temp 20C --cut 2lb"})
final class JarCup implements Callable<Integer> {
  /** ISO 2431 keeps cup and liquid within half a kelvin (from memory). */
  private static final double KEPT_WITHIN_K = 0.5;

  @Option(names = "--cup", required = true, paramLabel = "CUP", description = "Which cup: iso4.")
  String cup = "";

  @Option(
      names = "--time",
      required = true,
      paramLabel = "TIME",
      description = "Until the stream breaks: 32s.")
  String time = "";

  @Option(
      names = "--temp",
      required = true,
      paramLabel = "T",
      description = "Of the liquid: 23C, 73F.")
  String temp = "";

  @Option(names = "--cut", paramLabel = "C", description = "Its cut, for the density: 2lb.")
  @Nullable String cut;

  @Option(names = "--solids", paramLabel = "P", description = "Or its solids by weight: 23%%.")
  @Nullable String solids;

  @Option(names = "--strength", paramLabel = "S", description = "Of the spirit. Default: 95%%.")
  @Nullable String strength;

  @Mixin Help help = new Help();
  private final Shared shared;

  JarCup(Shared shared) {
    this.shared = shared;
  }

  /** The time the same liquid takes in another cup. */
  record Elsewhere(String cup, double timeS) {}

  /** The answer. */
  record Answer(
      String cup,
      double timeS,
      double liquidTempC,
      double cupTempC,
      double viscosityMm2PerS,
      OptionalDouble viscosityMPas,
      @JsonUnwrapped JarFigures mixture,
      List<Elsewhere> elsewhere) {}

  @Override
  public Integer call() {
    FlowCup flowCup = FlowCup.named(cup).orElseThrow(this::noSuchCup);
    double seconds = Quantities.duration("--time", time).toMillis() / 1000.0;
    double tempC = Quantities.temperatureC("--temp", temp);
    double viscosity = flowCup.viscosityMm2PerS(seconds);
    Optional<Solution> litre = litre();
    Answer answer =
        new Answer(
            flowCup.word(),
            seconds,
            tempC,
            flowCup.tempC(),
            viscosity,
            litre
                .map(l -> OptionalDouble.of(viscosity * l.densityKgPerM3() / 1000))
                .orElse(OptionalDouble.empty()),
            litre.map(l -> JarFigures.of(l.cut(), l.strengthVolPct())).orElseGet(JarFigures::none),
            elsewhere(flowCup, viscosity));
    if (shared.json) {
      shared.printJson(answer);
    } else {
      print(flowCup, answer);
    }
    return 0;
  }

  private RefusedInput noSuchCup() {
    String known =
        Arrays.stream(FlowCup.values()).map(FlowCup::word).collect(Collectors.joining(" "));
    return RefusedInput.of("--cup \"" + cup + "\"", "no such cup is known", "use one of " + known);
  }

  private Optional<Solution> litre() {
    if (cut == null && solids == null) {
      return Optional.empty();
    }
    double strengthPct = JarWords.strengthPct(strength);
    Cut known = JarWords.cut(cut, solids, strengthPct);
    return Optional.of(Solution.ofVolume(known, 1000, strengthPct));
  }

  private static List<Elsewhere> elsewhere(FlowCup ran, double viscosity) {
    return Arrays.stream(FlowCup.values())
        .filter(other -> other != ran)
        .flatMap(
            other ->
                other.seconds(viscosity).stream()
                    .mapToObj(seconds -> new Elsewhere(other.word(), seconds)))
        .toList();
  }

  private void print(FlowCup flowCup, Answer answer) {
    JarText text = new JarText(shared);
    text.figure(
        "%s, %s s at %s: %s mm²/s"
            .formatted(
                flowCup.title(),
                plain(answer.timeS()),
                text.temperature(answer.liquidTempC()),
                Show.fixed(answer.viscosityMm2PerS(), 1)));
    answer
        .viscosityMPas()
        .ifPresentOrElse(
            mPas -> text.line("viscosity", Show.fixed(mPas, 1) + " mPa s"),
            () -> text.line("viscosity", "in mPa s once the cut is known: add --cut"));
    if (!answer.elsewhere().isEmpty()) {
      text.line(
          "in other cups",
          answer.elsewhere().stream()
              .map(e -> e.cup() + " " + Show.fixed(e.timeS(), 0) + " s")
              .collect(Collectors.joining(", ")));
    }
    text.line(
        "valid",
        "from %s to %s s, this cup at %s"
            .formatted(
                plain(flowCup.shortestS()),
                plain(flowCup.longestS()),
                text.temperature(flowCup.tempC())));
    text.from(
        "the cup's published equation, as quoted in the literature (the standard's own text was"
            + " not at hand); density by ideal mixing at "
            + text.temperature(20)
            + "; thin shellac runs too fast for"
            + " most cups, so take the smallest hole");
    if (Math.abs(answer.liquidTempC() - flowCup.tempC()) > KEPT_WITHIN_K) {
      text.mind(
          "the standard measures at %s, and this ran at %s; the figure holds at that temperature only, warm liquid runs faster"
              .formatted(
                  text.temperature(flowCup.tempC()), text.temperature(answer.liquidTempC())));
    }
    text.mind(JarText.SPIRIT);
    text.end();
  }

  private static String plain(double seconds) {
    return Show.fixed(seconds, seconds == Math.rint(seconds) ? 0 : 1);
  }
}

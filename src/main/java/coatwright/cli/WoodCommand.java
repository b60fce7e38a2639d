package coatwright.cli;

import coatwright.air.MoistAir;
import coatwright.cli.WoodAnswer.CarryingIn;
import coatwright.cli.WoodAnswer.Equalising;
import coatwright.cli.WoodAnswer.Face;
import coatwright.cli.WoodAnswer.Film;
import coatwright.cli.WoodAnswer.Movement;
import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import coatwright.quantity.Show;
import coatwright.wood.Board;
import coatwright.wood.CarriedIn;
import coatwright.wood.CrazingWarning;
import coatwright.wood.FilmTolerance;
import coatwright.wood.MoistureEqualising;
import coatwright.wood.Sawn;
import coatwright.wood.SpeciesTable;
import coatwright.wood.WoodMovement;
import coatwright.wood.WoodSpecies;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Says how a board moves, warms and dries, and what that does to the film on it. */
@Command(
    name = "wood",
    description = {
      "How far a board moves between two airs, and what that asks of the film on it.",
      "How many days it takes. When a board carried in stands above the room's dew point."
    },
    footer = {
      "",
      "Example: coatwright wood --species cherry --width 300mm --from 45%% --to 65%% --temp 20C",
      "         coatwright wood --species ash --thickness 25mm --carried-from 8C --into 20C,60%%"
    })
final class WoodCommand implements Callable<Integer> {
  /** The outlook's board too; assumed where no species with a figure is named. */
  private static final double USUAL_GRAVITY = 0.55;

  private static final double USUAL_MOISTURE_PCT = 9;
  private static final double EQUALISED_SHARE = 0.9;

  /** Margin above the dew point that coating guides naming ISO 8502-4 ask for, K. */
  private static final double USUAL_MARGIN_K = 3;

  @Option(names = "--species", paramLabel = "S", description = "Its wood: cherry, white oak.")
  @Nullable String species;

  @Option(
      names = "--coefficient",
      paramLabel = "C",
      description = "Your own: change of the width for one point of moisture, 0.25%%.")
  @Nullable String coefficient;

  @Option(
      names = "--cut",
      paramLabel = "flat|quarter",
      defaultValue = "flat",
      description = "Flat-sawn, which moves most, or quarter-sawn. Default: flat.")
  String cut = "flat";

  @Option(names = "--width", paramLabel = "L", description = "Across the grain: 300mm, 12in.")
  @Nullable String width;

  @Option(names = "--thickness", paramLabel = "L", description = "Of the board: 18mm, 0.75in.")
  @Nullable String thickness;

  @Option(names = "--from", paramLabel = "H", description = "Humidity it is used to: 45%%.")
  @Nullable String from;

  @Option(names = "--to", paramLabel = "H", description = "Humidity it comes to: 65%%.")
  @Nullable String to;

  @Option(
      names = "--temp",
      paramLabel = "T",
      defaultValue = "20C",
      description = "Warmth of both airs. Default: 20C.")
  String temp = "20C";

  @Option(
      names = "--moisture",
      paramLabel = "M,M",
      description = "Or moisture of the wood before and after, by a meter: 8%%,11%%.")
  @Nullable String moisture;

  @Option(names = "--carried-from", paramLabel = "T", description = "Warmth of the board: 8C.")
  @Nullable String carriedFrom;

  @Option(names = "--into", paramLabel = "T,H", description = "The room it comes into: 20C,60%%.")
  @Nullable String into;

  @Option(
      names = "--margin",
      paramLabel = "K",
      description = "How far the face should stand above the dew point. Default: 3K.")
  @Nullable String margin;

  @Option(
      names = "--film-break",
      paramLabel = "E",
      description = "Stretch that breaks the film, if you measured it. Default: 0.9%%, assumed.")
  @Nullable String filmBreak;

  @Option(names = "--build", paramLabel = "X", description = "Dry film on it: 80um, 3mil.")
  @Nullable String build;

  @Option(
      names = "--build-limit",
      paramLabel = "X",
      description = "Dry film beyond which the finish crazes. Default: 100um, as for shellac.")
  @Nullable String buildLimit;

  @Mixin Help help = new Help();
  private final Shared shared;
  private final List<String> assumptions = new ArrayList<>();

  WoodCommand(Shared shared) {
    this.shared = shared;
  }

  @Override
  public Integer call() {
    WoodAnswer answer = answer();
    if (shared.json) {
      shared.printJson(answer);
    } else {
      new WoodText(shared.out, shared.unitSystem()).print(answer);
    }
    return 0;
  }

  private WoodAnswer answer() {
    Optional<WoodSpecies> wood =
        Optional.ofNullable(species).map(typed -> SpeciesTable.shipped().named(typed));
    OptionalDouble thicknessMm =
        thickness == null
            ? OptionalDouble.empty()
            : OptionalDouble.of(Quantities.lengthMm("--thickness", thickness));
    boolean moves = from != null || to != null || moisture != null;
    boolean carried = carriedFrom != null || into != null;
    if (!moves && !carried && thicknessMm.isEmpty()) {
      throw RefusedInput.of(
          "wood",
          "nothing is asked about it",
          "write --from and --to for its movement, or --carried-from, --into and --thickness");
    }
    return new WoodAnswer(
        wood.map(WoodSpecies::name),
        wood.map(WoodSpecies::latin),
        thicknessMm,
        moves ? Optional.of(movement(wood)) : Optional.empty(),
        thicknessMm.isPresent() && (moves || !carried)
            ? Optional.of(equalising(thicknessMm.getAsDouble()))
            : Optional.empty(),
        carried ? Optional.of(carriedIn(wood, thicknessMm)) : Optional.empty(),
        List.copyOf(assumptions));
  }

  private Movement movement(Optional<WoodSpecies> wood) {
    double perPct = perPct(wood);
    OptionalDouble airTempC = OptionalDouble.empty();
    OptionalDouble fromRhPct = OptionalDouble.empty();
    OptionalDouble toRhPct = OptionalDouble.empty();
    double fromPct;
    double toPct;
    if (moisture != null) {
      if (from != null || to != null) {
        throw RefusedInput.of(
            "--moisture with --from or --to", "either says it", "leave one of them out");
      }
      String[] two = pair("--moisture", moisture, "8%,11%");
      fromPct = Quantities.percent("--moisture", two[0]);
      toPct = Quantities.percent("--moisture", two[1]);
    } else if (from == null || to == null) {
      throw RefusedInput.of(
          from == null ? "--from" : "--to", "is missing", "write both, --from 45% --to 65%");
    } else {
      airTempC = OptionalDouble.of(Quantities.temperatureC("--temp", temp));
      fromRhPct = OptionalDouble.of(Quantities.relativeHumidityPct("--from", from));
      toRhPct = OptionalDouble.of(Quantities.relativeHumidityPct("--to", to));
      fromPct =
          WoodMovement.moisturePct(MoistAir.of(airTempC.getAsDouble(), fromRhPct.getAsDouble()));
      toPct = WoodMovement.moisturePct(MoistAir.of(airTempC.getAsDouble(), toRhPct.getAsDouble()));
    }
    OptionalDouble widthMm =
        width == null
            ? OptionalDouble.empty()
            : OptionalDouble.of(Quantities.lengthMm("--width", width));
    OptionalDouble movementMm =
        widthMm.isEmpty()
            ? OptionalDouble.empty()
            : OptionalDouble.of(
                WoodMovement.changeMm(widthMm.getAsDouble(), perPct, fromPct, toPct));
    double strainPct = WoodMovement.strainPct(perPct, fromPct, toPct);
    assumptions.add(
        "The whole board follows the air and is free to move; a single board differs from its"
            + " species' mean.");
    return new Movement(
        sawn().toString(),
        perPct,
        coefficient != null ? "your own" : wood.map(WoodSpecies::movementBasis).orElse(""),
        airTempC,
        fromRhPct,
        toRhPct,
        fromPct,
        toPct,
        widthMm,
        movementMm,
        strainPct,
        film(strainPct));
  }

  private double perPct(Optional<WoodSpecies> wood) {
    if (coefficient != null) {
      return Quantities.percent("--coefficient", coefficient) / 100;
    }
    return wood.map(w -> w.movementPerPct(sawn()))
        .orElseThrow(
            () ->
                RefusedInput.of(
                    "movement",
                    "it needs a wood",
                    "write --species cherry, or your own --coefficient 0.25%"));
  }

  private Sawn sawn() {
    return switch (cut.toLowerCase(Locale.ROOT)) {
      case "flat" -> Sawn.FLAT;
      case "quarter" -> Sawn.QUARTER;
      default ->
          throw RefusedInput.of(
              "--cut \"" + cut + "\"", "a board is flat or quarter", "write --cut flat");
    };
  }

  private Film film(double strainPct) {
    FilmTolerance tolerance = FilmTolerance.BRITTLE;
    if (filmBreak != null) {
      double breakPct = Quantities.percent("--film-break", filmBreak);
      double yieldShare = FilmTolerance.BRITTLE.yieldPct() / FilmTolerance.BRITTLE.breakPct();
      tolerance = new FilmTolerance(breakPct * yieldShare, breakPct, false);
      assumptions.add(
          "The film yields at "
              + Show.fixed(tolerance.yieldPct(), 2)
              + " %: the share of its break that holds for brittle films.");
    } else {
      assumptions.add(
          "The film yields at 0.4 % and breaks at 0.9 %, as paints and glues on panel paintings do;"
              + " nobody measured this one.");
    }
    OptionalDouble buildUm =
        build == null
            ? OptionalDouble.empty()
            : OptionalDouble.of(Quantities.lengthUm("--build", build));
    OptionalDouble limitUm =
        build == null
            ? OptionalDouble.empty()
            : OptionalDouble.of(
                Quantities.lengthUm("--build-limit", buildLimit == null ? "100um" : buildLimit));
    CrazingWarning warning = new CrazingWarning(strainPct, tolerance, buildUm, limitUm);
    return new Film(
        warning.level().toString(),
        tolerance.yieldPct(),
        tolerance.breakPct(),
        tolerance.assumed(),
        buildUm,
        limitUm,
        warning.overBuilt());
  }

  private Equalising equalising(double thicknessMm) {
    var both = MoistureEqualising.estimate(thicknessMm, Board.Faces.BOTH, EQUALISED_SHARE);
    var one = MoistureEqualising.estimate(thicknessMm, Board.Faces.ONE, EQUALISED_SHARE);
    assumptions.add(
        "Days are an estimate for bare wood near 20 °C, from the diffusion of water across spruce"
            + " and beech; a finish slows it.");
    return new Equalising(
        100 * EQUALISED_SHARE,
        both.quickestDays(),
        both.slowestDays(),
        one.quickestDays(),
        one.slowestDays());
  }

  private CarryingIn carriedIn(Optional<WoodSpecies> wood, OptionalDouble thicknessMm) {
    if (carriedFrom == null || into == null || thicknessMm.isEmpty()) {
      throw RefusedInput.of(
          "a board carried in",
          "it needs its warmth, the room and its thickness",
          "write --carried-from 8C --into 20C,60% --thickness 18mm");
    }
    String[] two = pair("--into", into, "20C,60%");
    MoistAir room =
        MoistAir.of(
            Quantities.temperatureC("--into", two[0]),
            Quantities.relativeHumidityPct("--into", two[1]));
    double boardTempC = Quantities.temperatureC("--carried-from", carriedFrom);
    double marginK =
        margin == null ? USUAL_MARGIN_K : Quantities.temperatureStepK("--margin", margin);
    OptionalDouble known = wood.map(WoodSpecies::specificGravity).orElse(OptionalDouble.empty());
    double gravity = known.orElse(USUAL_GRAVITY);
    if (known.isEmpty()) {
      assumptions.add(
          "Specific gravity 0.55: "
              + wood.map(w -> "there is no sourced figure for " + w.name())
                  .orElse("no species is named")
              + ".");
    }
    assumptions.add(
        "Calm air; the wood holds 9 % moisture; water that settles on the face is left out, and so"
            + " is the chill of a wet spirit film: ask outlook for that.");
    return new CarryingIn(
        boardTempC,
        room.airTempC(),
        room.rhPct(),
        room.dewPointC(),
        boardTempC - room.dewPointC(),
        marginK,
        gravity,
        known.isPresent() ? "table 5-3" : "assumed",
        face(thicknessMm.getAsDouble(), Board.Faces.BOTH, gravity, boardTempC, room, marginK),
        face(thicknessMm.getAsDouble(), Board.Faces.ONE, gravity, boardTempC, room, marginK));
  }

  private static Face face(
      double thicknessMm,
      Board.Faces faces,
      double gravity,
      double boardTempC,
      MoistAir room,
      double marginK) {
    Board board = Board.ofWood(thicknessMm, faces, gravity, USUAL_MOISTURE_PCT);
    CarriedIn carried = new CarriedIn(board, boardTempC, room);
    return new Face(
        minutes(carried.untilAboveDewPointBy(0)),
        minutes(carried.untilAboveDewPointBy(marginK)),
        carried.untilWithin(1).toSeconds() / 60.0);
  }

  private static OptionalDouble minutes(Optional<Duration> time) {
    return time.map(t -> OptionalDouble.of(t.toSeconds() / 60.0)).orElse(OptionalDouble.empty());
  }

  private static String[] pair(String option, String text, String example) {
    String[] two = text.split(",", -1);
    if (two.length != 2) {
      throw RefusedInput.of(
          option + " \"" + text + "\"",
          "it is two quantities with a comma between",
          "write it like " + example);
    }
    return two;
  }
}

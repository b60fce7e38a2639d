package coatwright.outlook;

import coatwright.film.Finish;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A coat about to be laid in a given air. Spreads are natural-log standard deviations unless their
 * name says K or Pct.
 *
 * @param woodTempC empty = taken equal to the air, and said so
 * @param cutGPerL empty = the finish's usual cut with its spread, and said so
 * @param retarderVolPct 2-butoxyethanol, per cent of the solution; 0 = none
 * @param retarderDrops a dose in drops as told: recorded, not simulated
 * @param coatsBefore coats already laid, {@code intervalMin} apart
 * @param learnedBrushingMin this part's learned brushing time, minutes
 */
public record OutlookRequest(
    Finish finish,
    double airTempC,
    double rhPct,
    double pressurePa,
    double airTempErrorK,
    double rhErrorPct,
    OptionalDouble woodTempC,
    double woodTempErrorK,
    OptionalDouble cutGPerL,
    OptionalDouble wetFilmUm,
    String method,
    OptionalDouble strengthVolPct,
    double retarderVolPct,
    Optional<String> retarderDrops,
    double draughtMPerS,
    int coatsBefore,
    double intervalMin,
    double boardThicknessMm,
    OptionalDouble learnedBrushingMin,
    List<String> assumptions) {}

package coatwright.outlook;

import coatwright.journal.Part;
import coatwright.wood.Board;
import coatwright.wood.SpeciesTable;
import coatwright.wood.WoodSpecies;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The wood a part is made of, as far as heat goes: what was written down with it, and a usual wood
 * where that says nothing, or names a wood whose weight has no source.
 *
 * @param thicknessMm of the board
 * @param specificGravity of the species, or the usual one
 * @param species its name where its weight is known
 */
record PartWood(double thicknessMm, double specificGravity, Optional<String> species) {
  /** Between cherry and oak; assumed. */
  private static final double USUAL_GRAVITY = 0.55;

  /** Of wood in a heated shop; assumed. */
  private static final double USUAL_MOISTURE_PCT = 9;

  static PartWood of(Optional<Part> part, double usualThicknessMm) {
    double thicknessMm =
        part.map(Part::thicknessMm).orElse(OptionalDouble.empty()).orElse(usualThicknessMm);
    Optional<WoodSpecies> known =
        part.flatMap(Part::species)
            .flatMap(SpeciesTable.shipped()::find)
            .filter(wood -> wood.specificGravity().isPresent());
    double gravity =
        known
            .map(WoodSpecies::specificGravity)
            .orElse(OptionalDouble.empty())
            .orElse(USUAL_GRAVITY);
    return new PartWood(thicknessMm, gravity, known.map(WoodSpecies::name));
  }

  /** Lying on its back, the slower way. */
  Board board() {
    return Board.ofWood(thicknessMm, Board.Faces.ONE, specificGravity, USUAL_MOISTURE_PCT);
  }

  /** "a board of 18 mm black cherry". */
  String words() {
    String size = String.format(Locale.ROOT, "a board of %.0f mm", thicknessMm);
    return size + species.map(name -> " " + name).orElse("");
  }
}

package coatwright.wood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.ReferenceTable;
import coatwright.quantity.ReferenceTable.Row;
import coatwright.quantity.RefusedInput;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SpeciesTableTest {
  private static final SpeciesTable TABLE = SpeciesTable.shipped();

  /** Wood Handbook FPL-GTR-190, Table 13-5, as another reader copied it out. */
  @Test
  void movementIsThatOfThePrintedTable() {
    WoodChecks.MOVEMENT_PRINTED.holds();
  }

  /**
   * Table 13-5 follows from the shrinkage of Table 4-3, another table of the handbook: for a width
   * measured at 10 % moisture, C = (S/30) / (1 - S 20/30). Both tables are printed to two or three
   * digits. Rows whose shrinkage is from memory, and the commercial groups, whose shrinkage row is
   * of one species, are left out.
   */
  @Test
  void movementFollowsFromTheShrinkageOfAnotherTableWithinItsDigits() {
    WoodChecks.MOVEMENT_BY_SHRINKAGE.holds();
  }

  /** The one wood whose movement is computed by that rule, from the printed 4.6 and 8.2 %. */
  @Test
  void yellowPoplarIsComputedFromItsPrintedShrinkage() {
    WoodSpecies poplar = TABLE.named("poplar");
    assertThat(poplar.movementBasis()).isEqualTo("table 4-3");
    assertThat(poplar.movementPerPct(Sawn.QUARTER))
        .isCloseTo(0.046 / 30 / (1 - 0.046 * 20 / 30), within(5e-6));
    assertThat(poplar.movementPerPct(Sawn.FLAT))
        .isCloseTo(0.082 / 30 / (1 - 0.082 * 20 / 30), within(5e-6));
  }

  /**
   * Specific gravities were remembered by one reader and looked up by another. What is remembered
   * may not fail a build, so a disagreement is printed.
   */
  @Test
  void specificGravityIsSaidWhereAnotherReaderRemembersItOtherwise() {
    List<String> otherwise = new ArrayList<>();
    int sourced = 0;
    for (Row row : ReferenceTable.read("wood/species.csv")) {
      var gravity = WoodChecks.ours(row).specificGravity();
      sourced += gravity.isPresent() ? 1 : 0;
      if (gravity.isPresent() && gravity.getAsDouble() != row.number("specific_gravity_12pct_mc")) {
        otherwise.add(row.text("species") + " " + gravity.getAsDouble());
      }
    }
    otherwise.forEach(System.out::println);
    assertThat(sourced).isEqualTo(18);
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource({
    "cherry, black cherry",
    "Black Cherry, black cherry",
    "'cherry, black', black cherry",
    "white oak, white oak",
    "WHITE-OAK, white oak",
    "ash, white ash",
    "hard  maple, sugar maple",
    "walnut, black walnut",
    "yellow-poplar, yellow poplar",
    "tulipwood, yellow poplar",
    "beech, american beech",
  })
  void woodsAreKnownByTheNamesPeopleType(String typed, String name) {
    assertThat(TABLE.named(typed).name()).isEqualTo(name);
  }

  @Test
  void aNameThatSeveralWoodsShareIsAskedBack() {
    assertThatThrownBy(() -> TABLE.named("maple"))
        .isInstanceOf(RefusedInput.class)
        .hasMessage(
            "species \"maple\": that name does not say which wood; write sugar maple or black maple"
                + " or red maple or silver maple or bigleaf maple");
    assertThatThrownBy(() -> TABLE.named("oak")).hasMessageContaining("white oak or red oak");
  }

  @Test
  void anUnknownWoodIsRefusedWithThoseThereAre() {
    assertThatThrownBy(() -> TABLE.named("bubinga"))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining("\"bubinga\": no figures for it are known")
        .hasMessageContaining("enter your own coefficient")
        .hasMessageContaining("black cherry, black walnut, white oak");
    assertThat(TABLE.find("bubinga")).isEmpty();
    assertThat(TABLE.find("")).isEmpty();
  }

  /** Figures that only memory or contradicting pages gave. */
  @ParameterizedTest
  @ValueSource(strings = {"mahogany", "african mahogany", "teak", "white pine"})
  void whatHasNoSourceIsRefusedUntilItHas(String typed) {
    WoodSpecies wood = TABLE.named(typed);
    for (Sawn sawn : Sawn.values()) {
      assertThatThrownBy(() -> wood.movementPerPct(sawn))
          .isInstanceOf(RefusedInput.class)
          .hasMessageContaining("no sourced figure for the movement of " + wood.name())
          .hasMessageContaining("enter your own coefficient");
    }
    assertThat(wood.specificGravity()).isEmpty();
  }

  @Test
  void flatSawnMovesMoreThanQuarterSawnInEveryWood() {
    assertThat(TABLE.all()).hasSizeGreaterThan(35);
    for (WoodSpecies wood : TABLE.all()) {
      if (wood.tangentialPerPct().isPresent()) {
        assertThat(wood.movementPerPct(Sawn.FLAT))
            .as(wood.name())
            .isGreaterThan(wood.movementPerPct(Sawn.QUARTER));
      }
    }
  }

  private static final String HEADER =
      "name,latin,aliases,radial_per_pct,tangential_per_pct,movement_basis,specific_gravity,"
          + "gravity_basis\n";
  private static final String CHERRY =
      "black cherry,Prunus serotina,cherry,0.00126,0.00248,table 13-5,0.50,table 5-3\n";

  @Test
  void aTableReadsBackWhatItSays() {
    SpeciesTable read = SpeciesTable.parse("# remark\n\n" + HEADER + CHERRY);
    assertThat(read.all())
        .containsExactly(
            new WoodSpecies(
                "black cherry",
                "Prunus serotina",
                List.of("cherry"),
                OptionalDouble.of(0.00126),
                OptionalDouble.of(0.00248),
                "table 13-5",
                OptionalDouble.of(0.50)));
  }

  @Test
  void everyFaultOfATableIsToldWithItsLine() {
    String table =
        HEADER
            + CHERRY
            + "cherry,Prunus avium,,0.001,0.002,table 13-5,0.5,table 5-3\n"
            + "plum,Prunus domestica,,0.001,zwei,table 13-5,0.5,table 5-3\n"
            + "pear,Pyrus communis,,0.001,0.002,hearsay,0.5,table 5-3\n"
            + "yew,Taxus baccata,,0.001\n"
            + "box,Buxus sempervirens,,0.001,0.002,table 13-5,9.5,table 5-3\n"
            + "lime,Tilia cordata,,0.001,,table 13-5,0.5,table 5-3\n"
            + ",,,0.001,0.002,table 13-5,0.5,table 5-3\n";
    assertThatThrownBy(() -> SpeciesTable.parse(table))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining("7 faults")
        .hasMessageContaining("line 3: name \"cherry\": a name stands for one wood")
        .hasMessageContaining("line 4: tangential_per_pct \"zwei\" of plum")
        .hasMessageContaining("line 5: movement_basis \"hearsay\" of pear: no such basis")
        .hasMessageContaining("line 6: row \"yew,Taxus baccata,,0.001\": it has 4 cells")
        .hasMessageContaining("line 7: box: specific gravity is 9.5")
        .hasMessageContaining("line 8: tangential_per_pct \"\" of lime")
        .hasMessageContaining("line 9: row \",,,0.001");
    assertThatThrownBy(() -> SpeciesTable.parse("name;latin\n" + CHERRY))
        .hasMessageContaining("line 1: header \"name;latin\"");
    assertThatThrownBy(() -> SpeciesTable.parse("# nothing\n")).hasMessageContaining("empty");
  }
}

package coatwright.wood;

import coatwright.quantity.Fault;
import coatwright.quantity.OutOfRange;
import coatwright.quantity.RefusedInput;
import coatwright.quantity.StrictNumber;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * The woods with figures, by the names people type.
 *
 * <p>The shipped table is a file of the program; its head says where each figure is from. Capitals,
 * hyphens and the order "cherry, black" do not matter.
 */
public final class SpeciesTable {
  private static final String SHIPPED = "/coatwright/wood/species.csv";
  private static final List<String> HEADER =
      List.of(
          "name",
          "latin",
          "aliases",
          "radial_per_pct",
          "tangential_per_pct",
          "movement_basis",
          "specific_gravity",
          "gravity_basis");

  /** Bases without a source that could be read, and so without a figure. */
  private static final List<String> UNSOURCED = List.of("memory", "none");

  private static final List<String> SOURCED = List.of("table 13-5", "table 4-3", "table 5-3");

  private final List<WoodSpecies> species;
  private final Map<String, WoodSpecies> byName;

  private SpeciesTable(List<WoodSpecies> species, Map<String, WoodSpecies> byName) {
    this.species = List.copyOf(species);
    this.byName = Map.copyOf(byName);
  }

  /** The table that comes with the program. */
  public static SpeciesTable shipped() {
    return Shipped.TABLE;
  }

  /** Every wood, in the order of the file. */
  public List<WoodSpecies> all() {
    return species;
  }

  /** The wood of that name or alias, if it is here. */
  public Optional<WoodSpecies> find(String typed) {
    return Optional.ofNullable(byName.get(folded(typed)));
  }

  /**
   * The wood of that name or alias.
   *
   * @throws RefusedInput for a name that is not here, or that several woods share; it says which
   *     there are
   */
  public WoodSpecies named(String typed) {
    return find(typed).orElseThrow(() -> unknown(typed));
  }

  private RefusedInput unknown(String typed) {
    String input = "species \"" + typed.strip() + "\"";
    String word = folded(typed);
    List<String> alike =
        species.stream()
            .map(WoodSpecies::name)
            .filter(name -> !word.isEmpty() && List.of(name.split(" ", -1)).contains(word))
            .toList();
    if (!alike.isEmpty()) {
      return RefusedInput.of(
          input, "that name does not say which wood", "write " + String.join(" or ", alike));
    }
    String known = species.stream().map(WoodSpecies::name).collect(Collectors.joining(", "));
    return RefusedInput.of(
        input,
        "no figures for it are known",
        "enter your own coefficient, or write one of " + known);
  }

  /**
   * Reads a table: lines of comma-separated cells under a header; lines that begin with # are
   * remarks.
   *
   * @throws RefusedInput with every fault and its line
   */
  static SpeciesTable parse(String text) {
    List<Fault> faults = new ArrayList<>();
    List<WoodSpecies> species = new ArrayList<>();
    Map<String, WoodSpecies> byName = new HashMap<>();
    String[] lines = text.split("\n", -1);
    boolean headed = false;
    for (int i = 0; i < lines.length; i++) {
      String line = lines[i].strip();
      if (line.isEmpty() || line.startsWith("#")) {
        continue;
      }
      List<String> cells = List.of(line.split(",", -1));
      try {
        if (headed) {
          WoodSpecies read = species(cells);
          species.add(read);
          enter(read, byName);
        } else {
          checkHeader(cells);
        }
      } catch (RefusedInput refused) {
        for (Fault fault : refused.faults()) {
          faults.add(fault.onLine(i + 1));
        }
      }
      headed = true;
    }
    if (!headed) {
      faults.add(Fault.of("table of woods", "it is empty", "give it a header and rows"));
    }
    if (!faults.isEmpty()) {
      throw new RefusedInput(faults);
    }
    return new SpeciesTable(species, byName);
  }

  private static void checkHeader(List<String> cells) {
    if (!cells.equals(HEADER)) {
      throw RefusedInput.of(
          "header \"" + String.join(",", cells) + "\"",
          "a table of woods has other columns",
          "write " + String.join(",", HEADER));
    }
  }

  private static WoodSpecies species(List<String> cells) {
    if (cells.size() != HEADER.size()) {
      throw RefusedInput.of(
          "row \"" + String.join(",", cells) + "\"",
          "it has " + cells.size() + " cells",
          "give it " + HEADER.size());
    }
    String name = cells.get(0);
    if (name.isBlank() || cells.get(1).isBlank()) {
      throw RefusedInput.of(
          "row \"" + String.join(",", cells) + "\"", "a wood has a name and a latin one", "add it");
    }
    List<String> aliases =
        cells.get(2).isEmpty() ? List.of() : Arrays.asList(cells.get(2).split("\\|", -1));
    try {
      return new WoodSpecies(
          name,
          cells.get(1),
          aliases,
          figure(cells, 3, 5),
          figure(cells, 4, 5),
          cells.get(5),
          figure(cells, 6, 7));
    } catch (OutOfRange outside) {
      throw RefusedInput.of(name, String.valueOf(outside.getMessage()), "correct it");
    }
  }

  /** The number of that column, absent where its basis is no source. */
  private static OptionalDouble figure(List<String> cells, int column, int basisColumn) {
    String text = cells.get(column);
    String basis = cells.get(basisColumn);
    String input = HEADER.get(column) + " \"" + text + "\" of " + cells.get(0);
    if (!UNSOURCED.contains(basis) && !SOURCED.contains(basis)) {
      throw RefusedInput.of(
          HEADER.get(basisColumn) + " \"" + basis + "\" of " + cells.get(0),
          "no such basis",
          "write one of " + String.join(", ", SOURCED) + ", " + String.join(", ", UNSOURCED));
    }
    OptionalDouble number = StrictNumber.parse(text, '.');
    if (text.isEmpty() != basis.equals("none") || (number.isEmpty() && !text.isEmpty())) {
      throw RefusedInput.of(
          input, "a figure is a number, and is left empty only with none", "correct it");
    }
    return UNSOURCED.contains(basis) ? OptionalDouble.empty() : number;
  }

  private static void enter(WoodSpecies wood, Map<String, WoodSpecies> byName) {
    List<String> names = new ArrayList<>(wood.aliases());
    names.add(wood.name());
    for (String name : names) {
      if (name.isBlank() || byName.put(folded(name), wood) != null) {
        throw RefusedInput.of(
            "name \"" + name + "\"", "a name stands for one wood", "take it from one of them");
      }
    }
  }

  private static String folded(String typed) {
    String plain = typed.toLowerCase(Locale.ROOT).replace('-', ' ').strip();
    int comma = plain.indexOf(',');
    if (comma >= 0) {
      plain = plain.substring(comma + 1) + " " + plain.substring(0, comma);
    }
    return plain.strip().replaceAll("\\s+", " ");
  }

  private static final class Shipped {
    static final SpeciesTable TABLE = read();

    private Shipped() {}

    private static SpeciesTable read() {
      try (InputStream in = SpeciesTable.class.getResourceAsStream(SHIPPED)) {
        if (in == null) {
          throw new IllegalStateException("the program lacks its own file " + SHIPPED);
        }
        return parse(new String(in.readAllBytes(), StandardCharsets.UTF_8));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}

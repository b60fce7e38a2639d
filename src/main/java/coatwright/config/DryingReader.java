package coatwright.config;

import coatwright.film.Drying;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Reads how a finish hardens: one reader for every family, each asking only for its own keys, so
 * that another family's key is refused.
 */
interface DryingReader {
  /** The families by the word a file writes, in the order they are told. */
  Map<String, DryingReader> BY_FAMILY = families();

  /**
   * The drying a file describes; with faults added, what is returned is only good for reading on.
   *
   * @param basis of the file; it learns which keys there are
   */
  Drying read(Section file, ReferenceAir reference, BasisReader basis);

  /** What such a finish is to others where its file does not say: a word of the layers. */
  String usualLayer();

  /** The families' words. */
  static List<String> words() {
    return List.copyOf(BY_FAMILY.keySet());
  }

  /** The reader of a family that is known. */
  static DryingReader of(String family) {
    DryingReader reader = BY_FAMILY.get(family);
    if (reader == null) {
      throw new IllegalArgumentException("no such family: " + family);
    }
    return reader;
  }

  private static Map<String, DryingReader> families() {
    Map<String, DryingReader> families = new LinkedHashMap<>();
    families.put("evaporative", new SpiritReader());
    families.put("oxidative", new OxidativeReader());
    families.put("waterborne", new WaterborneReader());
    families.put("two-part", new TwoPartReader());
    families.put("lacquer", new LacquerReader());
    return families;
  }

  /**
   * The air a finish's usual drying is judged against.
   *
   * @param tempC °C
   * @param rhPct per cent RH
   */
  record ReferenceAir(double tempC, double rhPct) {}
}

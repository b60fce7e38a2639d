package coatwright.config;

import coatwright.quantity.Fault;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Settings that cannot be used as they stand: every fault of every file, with its line. */
public final class RefusedSettings extends RuntimeException {
  private final transient Map<String, List<Fault>> faultsByFile;

  /**
   * @param faultsByFile faults under the file's name as people know it; at least one
   */
  public RefusedSettings(Map<String, List<Fault>> faultsByFile) {
    super(message(faultsByFile));
    this.faultsByFile = new LinkedHashMap<>(faultsByFile);
  }

  /** A single fault of a file. */
  static RefusedSettings of(String file, Fault fault) {
    return new RefusedSettings(Map.of(file, List.of(fault)));
  }

  /** The faults under the name of the file they stand in, files in the order they were read. */
  public Map<String, List<Fault>> faultsByFile() {
    return faultsByFile;
  }

  private static String message(Map<String, List<Fault>> faultsByFile) {
    return faultsByFile.entrySet().stream()
        .map(file -> file.getKey() + ", " + counted(file.getValue()) + lines(file.getValue()))
        .collect(Collectors.joining("\n"));
  }

  private static String counted(List<Fault> faults) {
    return faults.size() == 1 ? "1 fault:" : faults.size() + " faults:";
  }

  private static String lines(List<Fault> faults) {
    return faults.stream()
        .sorted(Comparator.comparingInt((Fault fault) -> fault.line().orElse(0)))
        .map(fault -> "\n  " + fault.sentence())
        .collect(Collectors.joining());
  }
}

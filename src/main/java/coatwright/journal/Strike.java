package coatwright.journal;

/** Strikes out an earlier entry, as on paper: it stays readable and no longer counts. */
public record Strike(String entry, String reason) implements EntryBody {
  @Override
  public String kind() {
    return "strike";
  }
}

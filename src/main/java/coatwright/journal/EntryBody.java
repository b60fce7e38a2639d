package coatwright.journal;

/** What an entry says. Every change to the journal is one of these, appended and never altered. */
public sealed interface EntryBody permits Piece, Part, Jar, Coat, Observation, Strike, SaltCheck {
  /**
   * The word for this kind of entry in JSON and on paper: piece, part, jar, coat, note, strike,
   * calibration.
   */
  String kind();
}

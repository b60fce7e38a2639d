package coatwright.web;

import coatwright.quantity.Fault;
import coatwright.quantity.RefusedInput;
import java.util.List;
import java.util.Optional;

/**
 * What went wrong, as RFC 9457 writes it, with the faults a person must put right.
 *
 * @param type a name for the kind of trouble
 * @param title the kind in words
 * @param status the HTTP status
 * @param detail one sentence: what, the limit, what to do
 * @param faults every fault of the input, empty when it was not the input
 * @param nearest the known names nearest to an unknown one
 */
record Problem(
    String type,
    String title,
    int status,
    String detail,
    List<Fault> faults,
    Optional<List<String>> nearest) {

  static final String MEDIA_TYPE = "application/problem+json";

  static Problem of(int status, String name, String title, String detail) {
    return new Problem(
        "urn:coatwright:problem:" + name, title, status, detail, List.of(), Optional.empty());
  }

  static Problem refused(RefusedInput refusal) {
    return new Problem(
        "urn:coatwright:problem:refused-input",
        refusal.faults().size() == 1 ? "One thing to put right" : "Some things to put right",
        400,
        refusal.faults().get(0).sentence(),
        refusal.faults(),
        Optional.empty());
  }

  static Problem unknown(Unknown unknown) {
    return new Problem(
        "urn:coatwright:problem:unknown-name",
        "Not known here",
        404,
        unknown.sentence(),
        List.of(),
        Optional.of(unknown.nearest()));
  }

  /** Thrown to answer with this problem. */
  static final class Thrown extends RuntimeException {
    private final transient Problem problem;

    Thrown(Problem problem) {
      super(problem.detail());
      this.problem = problem;
    }

    Problem problem() {
      return problem;
    }
  }
}

package coatwright.climate;

import coatwright.climate.forecast.OutsideCourse;
import java.util.ArrayList;
import java.util.List;

/** Outdoor forecasts in the order they came; the oldest are let go. Safe for many threads. */
final class OutsideCourses {
  private static final int KEPT = 1_000;

  private final List<OutsideCourse> courses = new ArrayList<>();
  private int gone;

  synchronized void add(OutsideCourse course) {
    courses.add(course);
    if (courses.size() > KEPT) {
      courses.remove(0);
      gone++;
    }
  }

  /** Those that came after the first so many. */
  synchronized List<OutsideCourse> after(int told) {
    return List.copyOf(courses.subList(Math.max(0, told - gone), courses.size()));
  }

  /** How many came before those that are still held. */
  synchronized int gone() {
    return gone;
  }
}

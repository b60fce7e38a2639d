package coatwright;

import coatwright.watch.Bell;
import coatwright.watch.Warning;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Every way a warning is carried out, and the log; one that fails does not keep the others. */
final class Bells implements Bell {
  private static final Logger LOG = LoggerFactory.getLogger(Bells.class);

  private final List<Bell> bells = new CopyOnWriteArrayList<>();

  void add(Bell bell) {
    bells.add(bell);
  }

  @Override
  public void ring(Warning warning) {
    LOG.warn("warning {}: {}", warning.kind(), warning.message());
    each(bell -> bell.ring(warning));
  }

  @Override
  public void end(Warning warning) {
    LOG.info("over, {}: {}", warning.kind(), warning.message());
    each(bell -> bell.end(warning));
  }

  private void each(java.util.function.Consumer<Bell> strike) {
    for (Bell bell : bells) {
      try {
        strike.accept(bell);
      } catch (RuntimeException silent) {
        LOG.error("a warning could not be carried out by {}", bell, silent);
      }
    }
  }
}

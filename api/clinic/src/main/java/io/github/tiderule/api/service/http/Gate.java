package io.github.tiderule.api.service.http;

import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

/**
 * Lets so many pieces of work be done at a time, and so many more wait their turn, for a while. Who
 * comes then is sent away at once: waiting longer than that serves nobody.
 */
public final class Gate {

  private final Semaphore admitted;
  private final Semaphore places;
  private final long waitMillis;

  /** An open gate with room for so much work at a time, and so many who wait. */
  public Gate(Settings.Limits limits) {
    admitted = new Semaphore(limits.working() + limits.waiting());
    places = new Semaphore(limits.working(), true);
    waitMillis = limits.turn().toMillis();
  }

  /**
   * @throws Refusal when too many wait, or its turn does not come in time
   */
  <T> T pass(Supplier<T> work) {
    if (!admitted.tryAcquire()) {
      throw Refusal.busy();
    }
    try {
      return passInTurn(work);
    } finally {
      admitted.release();
    }
  }

  private <T> T passInTurn(Supplier<T> work) {
    try {
      if (!places.tryAcquire(waitMillis, TimeUnit.MILLISECONDS)) {
        throw Refusal.busy();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw Refusal.busy();
    }
    try {
      return work.get();
    } finally {
      places.release();
    }
  }
}

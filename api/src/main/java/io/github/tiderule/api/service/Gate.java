package io.github.tiderule.api.service;

import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

/** Lets so many pieces of work be done at a time, and the rest wait their turn, for a while. */
final class Gate {

  private final Semaphore places;
  private final long waitMillis;

  Gate(Settings.Limits limits) {
    places = new Semaphore(limits.working(), true);
    waitMillis = limits.turn().toMillis();
  }

  /**
   * @throws Refusal when its turn does not come in time
   */
  <T> T pass(Supplier<T> work) {
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

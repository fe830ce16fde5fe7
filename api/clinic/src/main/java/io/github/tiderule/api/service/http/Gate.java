package io.github.tiderule.api.service.http;

import io.github.tiderule.engine.Tiderule;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

/**
 * Lets so many pieces of work be done at a time, and so many more wait their turn, for a while. Who
 * comes then is sent away at once: waiting longer than that serves nobody. No piece of work goes on
 * for longer than it may, so that none keeps all others from their turn.
 */
public final class Gate {

  private final Semaphore admitted;
  private final Semaphore places;
  private final long waitMillis;
  private final long workNanos;

  /** An open gate with room for so much work at a time, and so many who wait. */
  public Gate(Settings.Limits limits) {
    admitted = new Semaphore(limits.working() + limits.waiting());
    places = new Semaphore(limits.working(), true);
    waitMillis = limits.turn().toMillis();
    workNanos = limits.work().toNanos();
  }

  /**
   * @throws Refusal when too many wait, its turn does not come in time, or it takes too long
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
      long from = System.nanoTime();
      return Tiderule.until(() -> System.nanoTime() - from > workNanos, work);
    } catch (CancellationException e) {
      throw Refusal.tooMuch();
    } finally {
      places.release();
    }
  }
}

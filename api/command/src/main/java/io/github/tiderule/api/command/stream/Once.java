package io.github.tiderule.api.command.stream;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Makes a thing when it is first asked for, once; a failure is remembered too. Thread-safe. */
public final class Once<T> implements Supplier<T> {

  private final Supplier<T> maker;
  private @Nullable T made;
  private @Nullable RuntimeException failure;

  /** A thing that is made by this maker. */
  public Once(Supplier<T> maker) {
    this.maker = maker;
  }

  @Override
  public synchronized T get() {
    if (failure != null) {
      throw failure;
    }
    T ready = made;
    if (ready == null) {
      try {
        ready = maker.get();
      } catch (RuntimeException e) {
        failure = e;
        throw e;
      }
      made = ready;
    }
    return ready;
  }
}

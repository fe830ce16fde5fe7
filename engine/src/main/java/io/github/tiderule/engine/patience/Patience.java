package io.github.tiderule.engine.patience;

import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * The patience of whoever asks, on the thread that reckons for them. What takes long asks {@link
 * #mustLast} again and again, so that nothing goes on for long after it has run out. The engine
 * itself reads no clock: whoever asks says when it is enough.
 */
public final class Patience {

  /** Absent where patience is endless. */
  private static final ThreadLocal<@Nullable BooleanSupplier> ENOUGH = new ThreadLocal<>();

  private Patience() {}

  /**
   * Does a piece of work while patience lasts.
   *
   * @param enough whether it has run out; asked often, so it must answer fast
   * @throws CancellationException when it ran out
   */
  public static <T> T during(BooleanSupplier enough, Supplier<T> work) {
    BooleanSupplier before = ENOUGH.get();
    ENOUGH.set(enough);
    try {
      return work.get();
    } finally {
      if (before == null) {
        ENOUGH.remove();
      } else {
        ENOUGH.set(before);
      }
    }
  }

  /**
   * Goes on only while patience lasts.
   *
   * @throws CancellationException when it has run out
   */
  public static void mustLast() {
    BooleanSupplier enough = ENOUGH.get();
    if (enough != null && enough.getAsBoolean()) {
      throw new CancellationException("it took longer than whoever asked would wait");
    }
  }
}

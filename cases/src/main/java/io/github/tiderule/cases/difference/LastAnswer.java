package io.github.tiderule.cases.difference;

import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.Objects;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Remembers what a function made of what it was last given: the same season is asked for its plan,
 * its reasoning and its sheets one after the other, and worked out once.
 */
final class LastAnswer<A, B> implements Function<A, B> {

  private final Function<A, B> function;
  private @Nullable A last;
  private @Nullable B answer;

  private LastAnswer(Function<A, B> function) {
    this.function = function;
  }

  /** The same record whose functions remember; whatever is no record stays as it is. */
  static Object kept(Object engine) throws IllegalStateException {
    RecordComponent[] components = engine.getClass().getRecordComponents();
    if (components == null) {
      return engine;
    }
    try {
      Object[] values = new Object[components.length];
      for (int i = 0; i < values.length; i++) {
        Object value = components[i].getAccessor().invoke(engine);
        values[i] = value instanceof Function<?, ?> function ? new LastAnswer<>(function) : value;
      }
      Class<?>[] types =
          Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
      return engine.getClass().getDeclaredConstructor(types).newInstance(values);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(e);
    }
  }

  @Override
  public synchronized B apply(A given) {
    B known = answer;
    if (known != null && Objects.equals(last, given)) {
      return known;
    }
    B made = function.apply(given);
    last = given;
    answer = made;
    return made;
  }
}

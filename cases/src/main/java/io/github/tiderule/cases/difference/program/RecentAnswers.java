package io.github.tiderule.cases.difference.program;

import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;

/**
 * Remembers what a function made of what it was given of late: the same season is asked for its
 * plan, its reasoning and its sheets one after the other, and worked out once.
 */
final class RecentAnswers<A, B> implements Function<A, B> {

  private static final int REMEMBERED = 8;

  private final Function<A, B> function;
  private final Map<A, B> recent =
      new LinkedHashMap<>() {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<A, B> eldest) {
          return size() > REMEMBERED;
        }
      };

  private RecentAnswers(Function<A, B> function) {
    this.function = function;
  }

  /**
   * The same record with functions that remember; whatever is no record stays as it is.
   *
   * @throws IllegalStateException if it cannot be made a second time
   */
  static Object kept(Object engine) {
    RecordComponent[] components = engine.getClass().getRecordComponents();
    if (components == null) {
      return engine;
    }
    try {
      Object[] values = new Object[components.length];
      for (int i = 0; i < values.length; i++) {
        values[i] = kept(components[i], engine);
      }
      return constructor(engine, components).newInstance(values);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(e);
    }
  }

  private static Object kept(RecordComponent component, Object engine)
      throws ReflectiveOperationException {
    Object value = Objects.requireNonNull(component.getAccessor().invoke(engine));
    return value instanceof Function<?, ?> function ? new RecentAnswers<>(function) : value;
  }

  private static Constructor<?> constructor(Object engine, RecordComponent[] components)
      throws NoSuchMethodException {
    Class<?>[] types =
        Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
    return engine.getClass().getDeclaredConstructor(types);
  }

  @Override
  public synchronized B apply(A given) {
    return recent.computeIfAbsent(given, function);
  }
}

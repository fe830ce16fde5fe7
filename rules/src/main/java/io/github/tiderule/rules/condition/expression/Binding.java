package io.github.tiderule.rules.condition.expression;

import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * A value of the matched fact that a condition gives a name to.
 *
 * @param place where the value goes in a match
 * @param from where what it is worked out from stands in it
 */
public record Binding(int place, List<Integer> from, Function<Object[], @Nullable Object> value) {

  public Binding {
    from = List.copyOf(from);
  }

  /** The value; absent where something it is worked out from is missing. */
  public @Nullable Object of(@Nullable Object[] match) {
    Object[] values = new Object[from.size()];
    for (int i = 0; i < values.length; i++) {
      @Nullable Object value = match[from.get(i)];
      if (value == null) {
        return null;
      }
      values[i] = value;
    }
    return value.apply(values);
  }
}

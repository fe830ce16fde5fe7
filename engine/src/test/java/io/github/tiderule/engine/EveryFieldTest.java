package io.github.tiderule.engine;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * Every field of every record that a caller fills is checked. The fields are found by looking, so
 * that one that is added without a check fails here.
 */
class EveryFieldTest {

  private static final CycleRecord WHOLE = WholeSeason.builder().build();

  /**
   * A field with what it must not hold.
   *
   * @param path in the record's own terms
   * @param record the whole record with the bad value in its place
   */
  private record Broken(String path, String value, Attempt record) {}

  private interface Attempt {
    Object make() throws ReflectiveOperationException;
  }

  private static RecordComponent[] components(Object record) {
    return record.getClass().getRecordComponents();
  }

  private static @Nullable Object value(Object record, RecordComponent component)
      throws ReflectiveOperationException {
    component.getAccessor().setAccessible(true);
    return component.getAccessor().invoke(record);
  }

  private static Object with(Object record, int place, @Nullable Object instead)
      throws ReflectiveOperationException {
    RecordComponent[] components = components(record);
    Class<?>[] types =
        Arrays.stream(components).map(RecordComponent::getType).toArray(Class[]::new);
    Object[] values = new Object[components.length];
    for (int i = 0; i < values.length; i++) {
      values[i] = i == place ? instead : value(record, components[i]);
    }
    Constructor<?> constructor = record.getClass().getDeclaredConstructor(types);
    return constructor.newInstance(values);
  }

  /** What a field of a type must never hold, whatever it is called. */
  private static List<Object> impossible(Class<?> type) {
    if (type == Double.class || type == double.class) {
      return List.of(Double.NaN, Double.POSITIVE_INFINITY, -1e300, 1e300, -31.0);
    }
    if (type == Integer.class || type == int.class) {
      return List.of(-1, Integer.MIN_VALUE, Integer.MAX_VALUE);
    }
    if (type == String.class) {
      return List.of("", " ", "a\u202Eb", "a\u0000", "x".repeat(1000));
    }
    if (type == Instant.class) {
      return List.of(Instant.MIN, Instant.MAX, Instant.parse("2099-01-01T00:00:00Z"));
    }
    if (type == LocalDate.class) {
      return List.of(LocalDate.MIN, LocalDate.MAX, LocalDate.of(2099, 1, 1));
    }
    if (type == ZoneId.class) {
      return List.of(ZoneId.of("+01:00"));
    }
    return List.of();
  }

  /** Types with which nothing can be wrong but that they are missing. */
  private static boolean isPlain(Class<?> type) {
    return type.isEnum()
        || type == boolean.class
        || type == Boolean.class
        || type == LocalTime.class
        || type == DayOfWeek.class;
  }

  private interface Rebuild {
    Object around(@Nullable Object part) throws ReflectiveOperationException;
  }

  private static void gather(Object record, String path, Rebuild rebuild, List<Broken> found)
      throws ReflectiveOperationException {
    RecordComponent[] components = components(record);
    for (int i = 0; i < components.length; i++) {
      int place = i;
      RecordComponent component = components[i];
      String here = path.isEmpty() ? component.getName() : path + "." + component.getName();
      Rebuild inside = part -> rebuild.around(with(record, place, part));
      boolean mayBeNull = component.getAnnotatedType().isAnnotationPresent(Nullable.class);
      if (!component.getType().isPrimitive() && !mayBeNull) {
        found.add(new Broken(here, "null", () -> inside.around(null)));
      }
      Object value = value(record, component);
      if (value == null) {
        throw new AssertionError("not filled, so not tried: " + here);
      }
      gatherValue(component.getType(), value, here, inside, found);
    }
  }

  private static void gatherValue(
      Class<?> type, Object value, String here, Rebuild inside, List<Broken> found)
      throws ReflectiveOperationException {
    for (Object bad : impossible(type)) {
      found.add(new Broken(here, bad.toString(), () -> inside.around(bad)));
    }
    if (value instanceof List<?> list) {
      assertThat("not filled, so not tried: " + here, list, is(not(empty())));
      gatherList(list, here, inside, found);
    } else if (value.getClass().isRecord()) {
      gather(value, here, inside, found);
    } else if (impossible(type).isEmpty() && !isPlain(type)) {
      throw new AssertionError("nobody knows what " + here + " must not hold: " + type);
    }
  }

  private static void gatherList(List<?> list, String here, Rebuild inside, List<Broken> found)
      throws ReflectiveOperationException {
    for (int i = 0; i < list.size(); i++) {
      int place = i;
      Object entry = list.get(i);
      Rebuild within =
          part -> {
            List<@Nullable Object> other = new ArrayList<>(list);
            other.set(place, part);
            return inside.around(other);
          };
      found.add(new Broken(here, "a null", () -> within.around(null)));
      gatherValue(entry.getClass(), entry, here + "[" + i + "]", within, found);
    }
  }

  private static List<Broken> all() throws ReflectiveOperationException {
    List<Broken> found = new ArrayList<>();
    gather(WHOLE, "", part -> Optional.ofNullable(part).orElseThrow(), found);
    return found;
  }

  private static Optional<String> wrong(Broken broken) throws ReflectiveOperationException {
    String what = broken.path() + " = " + broken.value() + ": ";
    try {
      broken.record().make();
      return Optional.of(what + "accepted");
    } catch (InvocationTargetException e) {
      if (!(e.getCause() instanceof CycleRefused refused)) {
        return Optional.of(what + e.getCause());
      }
      // lists are put in order, so that an entry may be told at another place of its list
      String list = broken.path().replaceAll("\\[\\d+]", "[]");
      List<String> fields =
          refused.violations().stream()
              .map(one -> one.field().replaceAll("\\[\\d+]", "[]"))
              .toList();
      boolean told =
          fields.contains(list)
              || (broken.value().equals("a null") && fields.contains(list + "[]"));
      return told ? Optional.empty() : Optional.of(what + fields);
    }
  }

  @Test
  void whatIsImpossibleIsRefusedUnderItsField() throws ReflectiveOperationException {
    List<String> wrong = new ArrayList<>();
    List<Broken> all = all();
    for (Broken broken : all) {
      wrong(broken).ifPresent(wrong::add);
    }
    assertThat(all.size(), greaterThan(300));
    assertThat(String.join("\n", wrong), wrong, is(empty()));
  }
}

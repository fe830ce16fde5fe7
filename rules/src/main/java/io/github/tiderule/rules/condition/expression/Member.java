package io.github.tiderule.rules.condition.expression;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentMap;
import org.jspecify.annotations.Nullable;

/** Properties, methods and constants of facts, by name. */
final class Member {

  /** Methods looked up before, by class; looking them up costs more than calling them. */
  private static final ClassValue<ConcurrentMap<Asked, List<Method>>> KNOWN =
      new ClassValue<>() {
        @Override
        protected ConcurrentMap<Asked, List<Method>> computeValue(Class<?> type) {
          return new ConcurrentHashMap<>();
        }
      };

  private record Asked(String name, int arguments) {}

  private Member() {}

  /** A property: {@code name()}, {@code getName()} or {@code isName()}. */
  static @Nullable Object property(Object of, String name) {
    String tail = name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
    for (String method : List.of(name, "get" + tail, "is" + tail)) {
      if (!methods(of.getClass(), method, 0).isEmpty()) {
        return call(of, of.getClass(), method, List.of());
      }
    }
    throw new IllegalArgumentException("no property " + name);
  }

  /** A constant of an enumeration or class. */
  static @Nullable Object constant(Class<?> type, String name) {
    try {
      return type.getField(name).get(null);
    } catch (ReflectiveOperationException e) {
      throw new IllegalArgumentException("no constant " + name, e);
    }
  }

  /** What a public method gives. */
  static @Nullable Object call(
      @Nullable Object of, Class<?> type, String name, List<Object> arguments) {
    for (Method method : methods(type, name, arguments.size())) {
      if (takes(method, arguments)) {
        try {
          return method.invoke(of, converted(method, arguments));
        } catch (IllegalAccessException | InvocationTargetException e) {
          throw new IllegalArgumentException("cannot ask " + name, e);
        }
      }
    }
    throw new IllegalArgumentException("no method " + name);
  }

  /** Public methods of a class or of a public type above it, which is where they may be called. */
  private static List<Method> methods(Class<?> type, String name, int arguments) {
    return KNOWN
        .get(type)
        .computeIfAbsent(new Asked(name, arguments), asked -> find(type, name, arguments));
  }

  private static List<Method> find(Class<?> type, String name, int arguments) {
    List<Method> found = new ArrayList<>();
    for (Class<?> one = type; one != null; one = one.getSuperclass()) {
      add(one, name, arguments, found);
      for (Class<?> above : one.getInterfaces()) {
        found.addAll(find(above, name, arguments));
      }
    }
    return List.copyOf(found);
  }

  private static void add(Class<?> type, String name, int arguments, List<Method> found) {
    if (Modifier.isPublic(type.getModifiers())) {
      for (Method method : type.getMethods()) {
        if (method.getName().equals(name)
            && method.getParameterCount() == arguments
            && Modifier.isPublic(method.getDeclaringClass().getModifiers())) {
          found.add(method);
        }
      }
    }
  }

  private static boolean takes(Method method, List<Object> arguments) {
    Class<?>[] types = method.getParameterTypes();
    for (int i = 0; i < types.length; i++) {
      boolean number = types[i].isPrimitive() && arguments.get(i) instanceof Number;
      if (!number && !types[i].isInstance(arguments.get(i))) {
        return false;
      }
    }
    return true;
  }

  private static Object[] converted(Method method, List<Object> arguments) {
    Class<?>[] types = method.getParameterTypes();
    Object[] values = new Object[types.length];
    for (int i = 0; i < types.length; i++) {
      Object argument = arguments.get(i);
      values[i] =
          !(argument instanceof Number number)
              ? argument
              : types[i] == int.class
                  ? (Object) number.intValue()
                  : types[i] == long.class
                      ? (Object) number.longValue()
                      : types[i] == double.class ? (Object) number.doubleValue() : argument;
    }
    return values;
  }
}

package io.github.tiderule.cases.difference.program;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.lang.reflect.Constructor;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.net.MalformedURLException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Objects;
import java.util.function.Supplier;
import java.util.jar.JarFile;

/**
 * A version of the program in this process, so that it can be asked a thousand times without
 * starting anew. Nothing of it is named here but its class {@code Program} and the shape of that:
 * made of streams and of a supplier of an engine, which is made once.
 */
public final class LoadedProgram {

  private static final String CLASS = "Program";
  private static final String USUAL = "io.github.tiderule.api.command." + CLASS;

  private final ClassLoader classes;
  private final Constructor<?> program;
  private final Constructor<?> streams;
  private final Method run;
  private final Supplier<Object> engine;

  private LoadedProgram(ClassLoader classes, String name) throws ReflectiveOperationException {
    this.classes = classes;
    Class<?> type = classes.loadClass(name);
    program =
        Arrays.stream(type.getConstructors())
            .filter(one -> one.getParameterCount() == 2)
            .filter(one -> one.getParameterTypes()[1].equals(Supplier.class))
            .findFirst()
            .orElseThrow(() -> new NoSuchMethodException(name + " of streams and an engine"));
    streams =
        program.getParameterTypes()[0].getConstructor(
            InputStream.class, OutputStream.class, OutputStream.class);
    run = type.getMethod("run", String[].class);
    engine = once(maker(supplied(program.getGenericParameterTypes()[1])));
  }

  /**
   * The program of a runnable jar.
   *
   * @throws IOException if the jar cannot be read
   * @throws ReflectiveOperationException if it has no such program
   */
  public static LoadedProgram of(Path jar) throws IOException, ReflectiveOperationException {
    return new LoadedProgram(
        new URLClassLoader(new URL[] {url(jar)}, ClassLoader.getPlatformClassLoader()), name(jar));
  }

  /**
   * The program of this build, from the class path.
   *
   * @throws ReflectiveOperationException if there is none
   */
  public static LoadedProgram ofThisBuild() throws ReflectiveOperationException {
    return new LoadedProgram(LoadedProgram.class.getClassLoader(), USUAL);
  }

  private static URL url(Path jar) throws MalformedURLException {
    return jar.toUri().toURL();
  }

  private static String name(Path jar) throws IOException, ClassNotFoundException {
    try (JarFile file = new JarFile(jar.toFile())) {
      if (file.getEntry(USUAL.replace('.', '/') + ".class") != null) {
        return USUAL;
      }
      return file.stream()
          .map(entry -> entry.getName())
          .filter(entry -> entry.matches("io/github/tiderule/.*/" + CLASS + "\\.class"))
          .findFirst()
          .map(entry -> entry.substring(0, entry.length() - ".class".length()).replace('/', '.'))
          .orElseThrow(() -> new ClassNotFoundException(CLASS + " in " + jar));
    }
  }

  private static Class<?> supplied(Type supplier) throws ClassNotFoundException {
    if (supplier instanceof ParameterizedType of
        && of.getActualTypeArguments()[0] instanceof Class<?> type) {
      return type;
    }
    throw new ClassNotFoundException("what is supplied by " + supplier);
  }

  private static Supplier<?> maker(Class<?> engine) throws ReflectiveOperationException {
    for (Method method : engine.getMethods()) {
      if (Modifier.isStatic(method.getModifiers())
          && method.getParameterCount() == 0
          && Supplier.class.isAssignableFrom(method.getReturnType())) {
        return (Supplier<?>) Objects.requireNonNull(method.invoke(null));
      }
    }
    throw new NoSuchMethodException("a supplier of " + engine);
  }

  private static Supplier<Object> once(Supplier<?> maker) {
    return new Supplier<>() {
      private Object made = this;

      @Override
      public synchronized Object get() {
        if (made == this) {
          made = RecentAnswers.kept(Objects.requireNonNull(maker.get()));
        }
        return made;
      }
    };
  }

  /** Where its classes are. */
  public ClassLoader classes() {
    return classes;
  }

  /**
   * Runs one command.
   *
   * @param input its standard input
   * @throws ReflectiveOperationException if it fails in another way than by an exit status
   */
  public Printed run(String input, String... arguments) throws ReflectiveOperationException {
    return run(engine, input, arguments);
  }

  /** Runs one command that must come to its end without an engine. */
  public Printed runWithoutEngine(String input, String... arguments)
      throws ReflectiveOperationException {
    return run(
        () -> {
          throw new UnsupportedOperationException("an engine is asked for");
        },
        input,
        arguments);
  }

  private Printed run(Supplier<Object> engine, String input, String... arguments)
      throws ReflectiveOperationException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int status = run(engine, input, out, err, arguments);
    return new Printed(
        status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  /** Runs one command and gives its exit status; it may never come to its end. */
  public int run(String input, OutputStream out, OutputStream err, String... arguments)
      throws ReflectiveOperationException {
    return run(engine, input, out, err, arguments);
  }

  private int run(
      Supplier<Object> engine,
      String input,
      OutputStream out,
      OutputStream err,
      String... arguments)
      throws ReflectiveOperationException {
    Thread thread = Thread.currentThread();
    ClassLoader before = thread.getContextClassLoader();
    thread.setContextClassLoader(classes);
    try {
      InputStream in = new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8));
      Object made = program.newInstance(streams.newInstance(in, out, err), engine);
      return (int) Objects.requireNonNull(run.invoke(made, (Object) arguments));
    } finally {
      thread.setContextClassLoader(before);
    }
  }
}

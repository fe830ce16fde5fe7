package io.github.tiderule.format;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Reasoning;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

/** Seasons with what the real engine reasons about them: the demonstrations and the case files. */
public final class Seasons {

  private static final Tiderule TIDERULE = Tiderule.create();

  /**
   * Every so many-th case file is looked at, more of them by night; all would take minutes. Odd,
   * since files and what is expected of them take turns.
   */
  private static final int EVERY = Nightly.of(23, 7);

  /** More of those that have semen in hand, since there are few. */
  private static final int EVERY_OF_SEMEN = 11;

  private Seasons() {}

  /** A season, and where it comes from. */
  public record Season(String name, CycleRecord cycle, Reasoning reasoning) {}

  /** The engine they were reasoned with. */
  public static Tiderule engine() {
    return TIDERULE;
  }

  /** A season on the class path of the tests. */
  public static Season resource(String name) {
    try (InputStream in = Seasons.class.getResourceAsStream(name)) {
      return of(name, Objects.requireNonNull(in).readAllBytes());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A season written as a cycle file. */
  public static Season text(String json) {
    return of("text", json.getBytes(StandardCharsets.UTF_8));
  }

  private static Season of(String name, byte[] json) {
    Reading reading = reading(json);
    if (reading instanceof Reading.Read read) {
      return new Season(name, read.cycle(), TIDERULE.reason(read.cycle()));
    }
    throw new IllegalArgumentException(name + " is refused");
  }

  private static Reading reading(byte[] json) {
    try {
      return CycleFile.read(new ByteArrayInputStream(json), null);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The demonstrations. */
  public static List<Season> demonstrations() {
    return files(Path.of("..", "..", "cases", "demo")).stream().map(Seasons::file).toList();
  }

  /** The demonstrations and a part of the case files, those that are not refused; read once. */
  public static List<Season> many() {
    return Many.ALL;
  }

  private static final class Many {
    static final List<Season> ALL = read();
  }

  /** A part of the case files that describe semen in hand, those that are not refused. */
  public static List<Season> ofSemen() {
    return part(files(Path.of("..", "..", "cases", "semen")), Math.min(EVERY, EVERY_OF_SEMEN));
  }

  private static List<Season> read() {
    List<Season> many = new ArrayList<>(demonstrations());
    many.addAll(part(files(Path.of("..", "..", "cases")), EVERY));
    return List.copyOf(many);
  }

  private static List<Season> part(List<Path> cases, int every) {
    List<Season> part = new ArrayList<>();
    for (int i = 0; i < cases.size(); i += every) {
      if (cases.get(i).endsWith("cycle.json")
          && reading(bytes(cases.get(i))) instanceof Reading.Read) {
        part.add(file(cases.get(i)));
      }
    }
    return part;
  }

  private static Season file(Path file) {
    return of(file.toString(), bytes(file));
  }

  private static byte[] bytes(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<Path> files(Path directory) {
    try (Stream<Path> files = Files.walk(directory)) {
      return files
          .filter(file -> file.toString().endsWith(".json") && !file.toString().contains("target"))
          .filter(file -> !file.toString().contains("schema"))
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

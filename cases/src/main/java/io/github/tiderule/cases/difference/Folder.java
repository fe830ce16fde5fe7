package io.github.tiderule.cases.difference;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Where answers are written: one text file each, every kind in a folder of its own. */
record Folder(Path path) {

  /**
   * Writes one answer, masked.
   *
   * @param name with slashes between folders, the first of them the kind
   * @throws IOException if it cannot be written
   */
  void write(String name, String text) throws IOException {
    Path file = path.resolve(name);
    Files.createDirectories(file.resolveSibling("."));
    Files.writeString(file, Masked.text(text));
  }

  /** Removes a directory and what is in it. */
  static void remove(Path directory) throws IOException {
    List<Path> all;
    try (Stream<Path> walk = Files.walk(directory)) {
      all = walk.sorted(Comparator.reverseOrder()).toList();
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    for (Path one : all) {
      Files.deleteIfExists(one);
    }
  }
}

package io.github.tiderule.cases.difference;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Where a dump is written: one text file an answer, each kind of answer in a folder of its own. */
record Folder(Path path) {

  /** A folder in it. */
  Folder of(String kind) {
    return new Folder(path.resolve(kind));
  }

  /**
   * Writes one answer, masked, with one line feed at its end.
   *
   * @param name with slashes between folders
   * @throws IOException if it cannot be written
   */
  void write(String name, String text) throws IOException {
    Path file = path.resolve(name);
    Files.createDirectories(file.resolveSibling("."));
    Files.writeString(file, Masked.text(text).stripTrailing() + "\n");
  }
}

package io.github.tiderule.cases.corpus;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Every case under a directory: {@code <topic>/<NNNN>-<slug>}. */
public final class Corpus {

  private static final Pattern FOLDER = Pattern.compile("[0-9]{4}-[a-z0-9]+(-[a-z0-9]+)*");

  private Corpus() {}

  /**
   * The cases under a directory, in the order of their names.
   *
   * @throws UncheckedIOException if a directory cannot be listed
   */
  public static List<CaseFolder> under(Path root) {
    return folders(root).stream()
        .filter(topic -> !topic.getFileName().toString().matches("src|target|\\..*"))
        .flatMap(Corpus::cases)
        .toList();
  }

  private static Stream<CaseFolder> cases(Path topic) {
    return folders(topic).stream()
        .filter(folder -> FOLDER.matcher(folder.getFileName().toString()).matches())
        .map(folder -> new CaseFolder(folder, topic.getFileName() + "/" + folder.getFileName()));
  }

  private static List<Path> folders(Path directory) {
    try (Stream<Path> entries = Files.list(directory)) {
      return entries.filter(Files::isDirectory).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

package io.github.tiderule.cases.difference;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * Lists every case whose advice differs between two rule bases: {@code AdviceDifference BEFORE
 * AFTER [DIRECTORY…]}.
 *
 * <p>BEFORE and AFTER are runnable jars, each with a local protocol after a plus sign if wanted
 * ({@code tiderule.jar+clinic.csv}). Cases are the cycle files in some directories and below,
 * {@code cases/demo} by default. A case without a difference is not listed.
 */
public final class AdviceDifference {

  private static final String CYCLE = "tiderule/cycle/1";

  private AdviceDifference() {}

  /**
   * Prints the differences.
   *
   * @param args see above
   * @throws IOException if a case cannot be read or a program cannot be run
   */
  public static void main(String[] args) throws IOException {
    if (args.length < 2) {
      System.err.println(
          "usage: AdviceDifference BEFORE.jar[+PROTOCOL] AFTER.jar[+PROTOCOL] [DIRECTORY…]");
      System.exit(2);
      return;
    }
    SortedMap<String, String> cycles = new TreeMap<>();
    for (String directory :
        args.length > 2 ? List.of(args).subList(2, args.length) : List.of("cases/demo")) {
      cycles.putAll(cycles(Path.of(directory)));
    }
    lines(Side.of(args[0]), Side.of(args[1]), cycles).forEach(System.out::println);
  }

  /** Cycle files of a directory and below, by path, each on one line. */
  static SortedMap<String, String> cycles(Path directory) throws IOException {
    SortedMap<String, String> cycles = new TreeMap<>();
    List<Path> files;
    try (Stream<Path> walk = Files.walk(directory)) {
      files = walk.filter(file -> file.toString().endsWith(".json")).toList();
    }
    for (Path file : files) {
      String text = Files.readString(file);
      if (text.contains(CYCLE) && Tree.of(text).at("schema").text().equals(CYCLE)) {
        cycles.put(file.toString(), text.replace('\r', ' ').replace('\n', ' '));
      }
    }
    return cycles;
  }

  /** The report: each case that differs, what differs in it, and how many there are. */
  static List<String> lines(Side before, Side after, SortedMap<String, String> cycles)
      throws IOException {
    List<String> texts = List.copyOf(cycles.values());
    List<Tree> old = before.answers(texts);
    List<Tree> now = after.answers(texts);
    List<String> lines = new ArrayList<>();
    int differing = 0;
    int index = 0;
    for (String name : cycles.keySet()) {
      List<String> changes = Changes.between(old.get(index), now.get(index));
      index++;
      if (!changes.isEmpty()) {
        differing++;
        lines.add(name);
        changes.forEach(change -> lines.add("  " + change));
      }
    }
    lines.add(differing + " of " + cycles.size() + " cases differ.");
    return lines;
  }
}

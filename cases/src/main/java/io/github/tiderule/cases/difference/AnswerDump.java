package io.github.tiderule.cases.difference;

import io.github.tiderule.cases.difference.program.LoadedProgram;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Writes every answer of a version of the program into a folder, one text file an answer, so that
 * two versions can be compared file by file: {@code AnswerDump JAR OUT CASES [--all | --files]}.
 *
 * <p>JAR is a runnable jar, with a local protocol after a plus sign if wanted ({@code
 * tiderule.jar+clinic.csv}). OUT is made anew or must be empty. CASES is a directory; the cycle
 * files in it and below are the cases. Sheets of paper and pages take long: they are made for the
 * demonstrations and for some of the other cases, with {@code --all} for all. With {@code --files}
 * there are only the answers to each cycle file that take no paper.
 *
 * <p>The hash of the rules is masked, and in what comes out of a record also keys and today. A
 * season looked at through the service is stale once its day is past, so two dumps to be compared
 * are best made on one day.
 */
public final class AnswerDump {

  private static final String DEMONSTRATIONS = "demo/";
  private static final int CASES_FOR_PAPER = 4;
  private static final int CASES_FOR_PAGES = 3;

  /** How much is asked. */
  enum Extent {
    FILES,
    SOME,
    ALL
  }

  private final Asked asked;
  private final SortedMap<String, String> cases;
  private final Extent extent;

  private AnswerDump(Asked asked, SortedMap<String, String> cases, Extent extent) {
    this.asked = asked;
    this.cases = cases;
    this.extent = extent;
  }

  /**
   * Writes the answers.
   *
   * @param args see above
   * @throws IOException if a file cannot be read or written
   * @throws ReflectiveOperationException if the jar holds no program that can be run
   */
  public static void main(String[] args) throws IOException, ReflectiveOperationException {
    List<String> given = List.of(args);
    if (given.size() < 3) {
      System.err.println("usage: AnswerDump JAR[+PROTOCOL] OUT CASES [--all | --files]");
      System.exit(2);
      return;
    }
    Side side = Side.of(given.get(0));
    Extent extent =
        given.contains("--all")
            ? Extent.ALL
            : given.contains("--files") ? Extent.FILES : Extent.SOME;
    LoadedProgram program = LoadedProgram.of(side.jar());
    write(program, side.protocol(), Path.of(given.get(1)), Path.of(given.get(2)), extent);
    // the service would go on serving
    System.exit(0);
  }

  /** Writes the answers of a program. */
  static void write(
      LoadedProgram program, @Nullable Path protocol, Path out, Path cases, Extent extent)
      throws IOException, ReflectiveOperationException {
    Path scratch = Files.createTempDirectory("answers");
    try {
      Asked asked = new Asked(program, protocol, new Folder(out), scratch);
      new AnswerDump(asked, cases(cases), extent).write();
    } finally {
      Folder.remove(scratch);
    }
  }

  private static SortedMap<String, String> cases(Path directory) throws IOException {
    SortedMap<String, String> cases = new TreeMap<>();
    AdviceDifference.cycles(directory)
        .forEach((path, text) -> cases.put(name(directory.relativize(Path.of(path))), text));
    return cases;
  }

  private static String name(Path file) {
    return file.toString().replace('\\', '/').replaceFirst("(/cycle)?\\.json$", "");
  }

  private void write() throws IOException, ReflectiveOperationException {
    CycleAnswers each = new CycleAnswers(asked);
    for (Map.Entry<String, String> one : cases.entrySet()) {
      each.write(one.getKey(), one.getValue());
    }
    if (extent != Extent.FILES) {
      new BookAnswers(asked).write();
      seasons();
      papers();
      demonstrations();
      new PageAnswers(asked).write(cases, some(CASES_FOR_PAGES));
    }
  }

  private void seasons() throws IOException, ReflectiveOperationException {
    SeasonsAnswers seasons = new SeasonsAnswers(asked);
    for (Map.Entry<String, String> one : some(CASES_FOR_PAPER).entrySet()) {
      seasons.write(one.getKey(), one.getValue());
    }
    seasons.stud(cases);
    seasons.together(cases);
  }

  private void papers() throws IOException, ReflectiveOperationException {
    PaperAnswers papers = new PaperAnswers(asked);
    for (Map.Entry<String, String> one : some(CASES_FOR_PAPER).entrySet()) {
      papers.write(one.getKey(), one.getValue());
    }
  }

  private void demonstrations() throws IOException, ReflectiveOperationException {
    for (Map.Entry<String, String> one : cases.entrySet()) {
      if (isDemonstration(one.getKey())) {
        new BookAnswers(asked).why(one.getKey(), one.getValue());
        new RefusalAnswers(asked).write(one.getKey(), one.getValue());
      }
    }
  }

  private static boolean isDemonstration(String name) {
    return name.startsWith(DEMONSTRATIONS);
  }

  /** The demonstrations and one case of so many; or all. */
  private SortedMap<String, String> some(int many) {
    SortedMap<String, String> some = new TreeMap<>();
    int number = 0;
    for (Map.Entry<String, String> one : cases.entrySet()) {
      if (extent == Extent.ALL || number % many == 0 || isDemonstration(one.getKey())) {
        some.put(one.getKey(), one.getValue());
      }
      number++;
    }
    return some;
  }
}

package io.github.tiderule.cases.corpus;

import io.github.tiderule.engine.Tiderule;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;

/**
 * Runs cases and prints what differs: {@code RunCases [DIRECTORY [WORD]]}, by default every case
 * under {@code cases}, otherwise those whose name contains the word.
 */
public final class RunCases {

  private RunCases() {}

  /** Ends with status 1 if a case does not hold, or an open one does. */
  public static void main(String[] args) {
    Path root = Path.of(args.length > 0 ? args[0] : "cases").toAbsolutePath();
    String word = args.length > 1 ? args[1] : "";
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    Judge judge = Judge.of(Answers.of(Tiderule.create()), root);
    List<CaseResult> results =
        Corpus.under(root).stream()
            .filter(folder -> folder.name().contains(word))
            .map(judge::judge)
            .toList();
    results.stream().filter(result -> !result.holds()).map(CaseResult::words).forEach(out::println);
    List<CaseResult> wrong =
        results.stream().filter(result -> result.holds() == result.folder().open()).toList();
    wrong.stream()
        .filter(CaseResult::holds)
        .forEach(result -> out.println(result.folder().name() + " is open but holds now"));
    out.println(results.size() + " cases, " + wrong.size() + " not as they should be");
    if (!wrong.isEmpty()) {
      System.exit(1);
    }
  }
}

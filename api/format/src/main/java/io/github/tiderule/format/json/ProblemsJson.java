package io.github.tiderule.format.json;

import io.github.tiderule.format.problem.Problem;
import java.util.List;
import java.util.OptionalLong;

/** A refusal as a JSON document, schema {@code tiderule/problems/1}. */
public final class ProblemsJson {

  /** The name and version of the document. */
  public static final String SCHEMA = "tiderule/problems/1";

  private ProblemsJson() {}

  /** The refusal of a file, with a line feed at its end. */
  public static String text(List<Problem> problems, Layout layout) {
    return text(problems, OptionalLong.empty(), layout);
  }

  /**
   * The refusal of one line of a batch, on one line with a line feed at its end.
   *
   * @param line number of the line, from 1
   */
  public static String ofLine(long line, List<Problem> problems) {
    return text(problems, OptionalLong.of(line), Layout.ONE_LINE);
  }

  private static String text(List<Problem> problems, OptionalLong line, Layout layout) {
    return Document.text(
        layout,
        json -> {
          json.text("schema", SCHEMA);
          line.ifPresent(number -> json.whole("line", number));
          list(json, problems);
        });
  }

  /** Writes the problems into a document, as its field {@code problems}. */
  public static void list(Document json, List<Problem> problems) {
    json.objects(
        "problems",
        problems,
        problem ->
            json.text("path", problem.path())
                .word("code", problem.code())
                .text("message", problem.message())
                .text("hint", problem.hint()));
  }
}

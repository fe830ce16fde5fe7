package io.github.tiderule.cases.difference;

import java.io.IOException;
import java.util.List;

/** What the program tells of itself: its help and its rule book; and why each rule is silent. */
record BookAnswers(Asked asked) {

  private static final List<String> COMMANDS =
      List.of(
          "advise",
          "trace",
          "batch",
          "changes",
          "stud",
          "accuracy",
          "rulebook",
          "calendar",
          "laboratory",
          "fhir",
          "serve",
          "backup",
          "restore",
          "export",
          "import",
          "users");

  /**
   * Writes help and rule book.
   *
   * @throws IOException if one cannot be written
   * @throws ReflectiveOperationException if the program cannot be run
   */
  void write() throws IOException, ReflectiveOperationException {
    for (String command : COMMANDS) {
      asked.run("help/" + command + ".txt", "", command, "--help");
    }
    asked.run("help/program.txt", "", "--help");
    asked.run("help/fhir-import.txt", "", "fhir", "import", "--help");
    asked.run("help/fhir-export.txt", "", "fhir", "export", "--help");
    asked.run("help/no-command.txt", "");
    asked.run("help/no-such-command.txt", "", "advice", "x.json");
    for (String format : List.of("markdown", "html", "json", "text")) {
      asked.runWithProtocol("rulebook/rulebook." + format, "", "rulebook", "--format=" + format);
    }
  }

  /** Writes, rule by rule, why it spoke or kept silent on a case. */
  void why(String name, String cycle) throws IOException, ReflectiveOperationException {
    StringBuilder text = new StringBuilder();
    for (String rule : rules()) {
      text.append("## ").append(rule).append('\n');
      text.append(
          asked.printed(cycle, asked.withProtocol("trace", "--rule", rule, Asked.INPUT)).text());
    }
    asked.folder().write("why/" + name + ".txt", text.toString());
  }

  private List<String> rules() throws IOException, ReflectiveOperationException {
    Tree book = Tree.of(asked.printed("", "rulebook", "--format=json").out());
    return book.at("cards").entries().stream().map(rule -> rule.at("id").text()).toList();
  }
}

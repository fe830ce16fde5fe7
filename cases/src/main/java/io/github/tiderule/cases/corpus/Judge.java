package io.github.tiderule.cases.corpus;

import com.fasterxml.jackson.databind.JsonNode;
import io.github.tiderule.format.problem.Problem;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Holds the answers of an engine against what the cases expect. */
public final class Judge {

  private final Answers answers;
  private final Path root;
  private final Map<String, Expecting> known;

  private Judge(Answers answers, Path root) {
    this.answers = answers;
    this.root = root;
    Map<String, Expecting> keys = new LinkedHashMap<>(ExpectedTimes.keys());
    keys.putAll(ExpectedDays.keys());
    keys.putAll(ExpectedWords.keys());
    keys.put("twin", this::twin);
    known = keys;
  }

  /**
   * A judge.
   *
   * @param root the directory the topics lie in
   */
  public static Judge of(Answers answers, Path root) {
    return new Judge(answers, root);
  }

  /** How one case goes. */
  public CaseResult judge(CaseFolder folder) {
    JsonNode written = folder.expectation();
    Differences differences = Differences.none();
    JsonNode expected = written.path("expect");
    Outcome outcome = answers.to(folder);
    if (outcome instanceof Outcome.Refused refused) {
      refused(expected, refused.problems(), differences);
    } else if (outcome instanceof Outcome.Advised advised) {
      differences.each(expected, advised, known);
    }
    differences
        .under("expect")
        .require(differences.checks() > 0, "at least one thing to hold", "nothing");
    return new CaseResult(
        folder,
        written.path("title").asText(),
        written.path("why").asText(),
        written.path("provenance").asText(),
        differences.checks() - 1,
        differences.found());
  }

  private static void refused(JsonNode expected, List<Problem> problems, Differences differences) {
    Differences here = differences.under("refused");
    List<String> actual =
        problems.stream().map(problem -> problem.code().word() + " at " + problem.path()).toList();
    if (!expected.has("refused")) {
      here.require(false, "the file is read", actual);
    }
    for (JsonNode one : expected.path("refused")) {
      String wanted = one.path("code").asText() + " at " + one.path("path").asText();
      here.require(actual.contains(wanted), wanted, actual);
    }
    expected
        .fieldNames()
        .forEachRemaining(
            key ->
                differences
                    .under(key)
                    .require(key.equals("refused"), "nothing beside a refusal", key));
  }

  private void twin(JsonNode expected, Outcome.Advised answer, Differences differences) {
    String name = expected.path("of").asText();
    CaseFolder other = new CaseFolder(root.resolve(name), name);
    Outcome outcome = answers.to(other);
    if (outcome instanceof Outcome.Refused refused) {
      differences.require(false, "an answered case: " + name, refused.problems());
    } else if (outcome instanceof Outcome.Advised elder) {
      Twins.check(expected, elder, answer, differences);
    }
  }
}

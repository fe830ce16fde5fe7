package io.github.tiderule.cases.corpus;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.github.tiderule.engine.Tiderule;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** That a wrong expectation is told, key by key, and nothing unknown passes. */
class JudgeTest {

  private static final Answers ANSWERS = Answers.of(Tiderule.create());

  @TempDir private Path root;

  private CaseResult judge(String expect) throws IOException {
    return judge(Files.readString(Path.of("demo", "chilled-one-dose.json")), expect);
  }

  private CaseResult judge(String cycle, String expect) throws IOException {
    Path folder = Files.createTempDirectory(root, "topic").resolve("0001-it");
    Files.createDirectories(folder);
    Files.writeString(folder.resolve("cycle.json"), cycle);
    Files.writeString(
        folder.resolve("expect.yaml"), "title: A try\nwhy: To see.\nexpect:\n" + expect);
    CaseFolder one = new CaseFolder(folder, "topic/0001-it");
    return Judge.of(ANSWERS, root).judge(one);
  }

  private static List<String> keys(CaseResult result) {
    return result.differences().stream().map(Difference::key).toList();
  }

  @Test
  void whatHoldsHasNoDifference() throws IOException {
    CaseResult result =
        judge(
            """
              action: [test, book]
              ovulation:
                median: {from: 2027-03-03, to: 2027-03-05}
                widthDays: {most: 6}
              plan:
                first: {from: 2027-03-06, to: 2027-03-06}
              rules: {fire: [FND-003], silent: [FND-011]}
              influence: {used: [p3]}
              notSaid: [day 12]
            """);
    assertThat(result.words(), result.differences(), empty());
    assertThat(result.checks(), equalTo(8));
  }

  @Test
  void everyWrongKeyIsNamed() throws IOException {
    CaseResult result =
        judge(
            """
              action: passed
              ovulation:
                median: {from: 2027-04-01}
                confirmed: true
              days: {2027-03-06: avoid}
              plan: none
              nextTest: none
              questions: {about: [p1]}
              cautions: {stop: [vet today]}
              rules: {fire: [FND-011], silent: [FND-003]}
              influence: {unused: [p3]}
              said: [no such words]
              notSaid: [Border]
            """);
    assertThat(
        keys(result),
        contains(
            "action",
            "ovulation.median",
            "ovulation.confirmed",
            "days.2027-03-06",
            "plan",
            "nextTest",
            "questions.about",
            "cautions.stop",
            "rules.fire",
            "rules.silent",
            "influence.unused",
            "said"));
    assertThat(result.words(), containsString("why: To see."));
    assertThat(result.words(), containsString("from 2027-04-01"));
  }

  @Test
  void anUnknownKeyIsADifference() throws IOException {
    assertThat(keys(judge("  acton: test\n")), contains("acton"));
    assertThat(keys(judge("  ovulation: {medium: 1}\n")), contains("ovulation.medium"));
  }

  @Test
  void anExpectationOfNothingIsADifference() throws IOException {
    assertThat(keys(judge("  {}\n")), contains("expect"));
  }

  @Test
  void aRefusalIsAnOutcomeToo() throws IOException {
    assertThat(keys(judge("{}", "  action: test\n")), contains("refused", "action"));
    String missing = "  refused: [{path: /schema, code: missing-field}]\n";
    assertThat(judge("{}", missing).differences(), empty());
    String other = "  refused: [{path: /schema, code: unknown-schema}]\n";
    assertThat(keys(judge("{}", other)), contains("refused"));
    assertThat(keys(judge(missing)), contains("refused"));
  }

  @Test
  void aKeyTwiceIsAnError() {
    assertThrows(UncheckedIOException.class, () -> judge("  action: test\n  action: book\n"));
  }
}

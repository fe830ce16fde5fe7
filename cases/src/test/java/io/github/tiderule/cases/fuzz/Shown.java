package io.github.tiderule.cases.fuzz;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import io.github.tiderule.format.node.Characters;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeReader;
import io.github.tiderule.format.problem.Problem;
import io.github.tiderule.format.problem.Problems;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What holds of every text that is shown to somebody, whatever was read. */
final class Shown {

  private Shown() {}

  /** Every character shows as itself; lines may end. */
  static void text(String text) {
    text.codePoints()
        .filter(character -> character != '\n' && !Characters.isSafe(character))
        .findFirst()
        .ifPresent(
            character -> {
              throw new AssertionError(
                  String.format(Locale.ROOT, "U+%04X is shown in: %s", character, text));
            });
  }

  /** A refusal says where, and why, and what may be done. */
  static void refusal(List<Problem> problems) {
    assertThat("a refusal has a reason", problems.isEmpty(), is(false));
    for (Problem problem : problems) {
      assertThat(problem.path(), problem.path().isEmpty() || problem.path().startsWith("/"));
      assertThat(problem.path(), problem.message().isBlank(), is(false));
      assertThat(problem.path(), problem.hint().isBlank(), is(false));
      text(problem.message());
      text(problem.hint());
    }
  }

  /** A JSON document reads again, and as it stands nothing in it can act. */
  static Node json(String written) {
    text(written);
    Problems problems = new Problems();
    @Nullable Node node = NodeReader.read(written, problems).orElse(null);
    assertThat(problems.all(), is(List.of()));
    if (node == null) {
      throw new AssertionError("nothing was read of " + written);
    }
    return node;
  }

  /** Nor can any text of a document, once it is read. */
  static void texts(Node node) {
    if (node instanceof Node.Text text) {
      text(text.value());
    } else if (node instanceof Node.Digits digits) {
      assertThat(digits.written(), not("NaN"));
    } else if (node instanceof Node.Entries entries) {
      entries.all().forEach(Shown::texts);
    } else if (node instanceof Node.Members members) {
      members.byKey().forEach((key, value) -> texts(value));
    }
  }
}

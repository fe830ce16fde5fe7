package io.github.tiderule.format.node;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.format.problem.Problems;
import java.util.Map;
import org.junit.jupiter.api.Test;

class CharactersTest {

  /** To a lone half of a surrogate pair, a tag character and a mark of direction. */
  private static final String ACTS = "a\u001b[2J\u202Eb\r\u2028c\uD800d\uDB40\uDC01e\u0085";

  @Test
  void whatWouldActIsWrittenOut() {
    assertThat(
        Characters.visible(ACTS),
        is("a<U+001B>[2J<U+202E>b<U+000D><U+2028>c<U+D800>d<U+E0001>e<U+0085>"));
  }

  @Test
  void whatShowsAsItselfStays() {
    String shows = "Jun\u0303o \u5B50 \uD83D\uDC15 \u0646\u200C\u0647 \u05D0\n\tx\r\ny";
    assertThat(Characters.visible(shows), is(shows));
  }

  @Test
  void aJsonTextHoldsItEscapedAndMeansTheSame() {
    Node node = new Node.Members(Map.of("a\u001b\u202E\u2028", new Node.Text(ACTS + "\"\n")));
    String text = NodeText.of(node);
    assertThat(text, Characters.firstUnsafe(text).isEmpty(), is(true));
    Problems problems = new Problems();
    assertThat(NodeReader.read(text, problems).orElseThrow(), is(node));
    assertThat(problems.none(), is(true));
    String indented = NodeText.indented(node);
    assertThat(Characters.visible(indented), is(indented));
  }
}

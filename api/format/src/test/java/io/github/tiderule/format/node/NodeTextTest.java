package io.github.tiderule.format.node;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.sameInstance;

import org.junit.jupiter.api.Test;

class NodeTextTest {

  @Test
  void whatShowsAsItselfStays() {
    String json = "{\"note\": \"Hündin, 5 °C, 👍\"}\n";
    assertThat(NodeText.escaped(json), is(sameInstance(json)));
  }

  @Test
  void whatDoesNotIsEscaped() {
    assertThat(
        NodeText.escaped("{\"a\u202Eb\": \"\u0007\u007F\"}\n"),
        is("{\"a\\u202Eb\": \"\\u0007\\u007F\"}\n"));
  }

  @Test
  void beyondTheBasicPlaneBothUnitsAre() {
    String tag = new String(Character.toChars(0xE0001));
    assertThat(NodeText.escaped(tag + "x" + tag), is("\\uDB40\\uDC01x\\uDB40\\uDC01"));
  }
}

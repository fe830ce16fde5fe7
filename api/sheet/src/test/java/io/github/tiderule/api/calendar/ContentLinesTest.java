package io.github.tiderule.api.calendar;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThanOrEqualTo;

import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** RFC 5545, section 3.1: lines of at most 75 octets, folded by a line break and one space. */
class ContentLinesTest {

  @Test
  void leavesShortLinesAlone() {
    String line = "SUMMARY:" + "x".repeat(67) + "\r\n";
    assertThat(ContentLines.folded(line), is(line));
    assertThat(ContentLines.folded(""), is(""));
  }

  @Test
  void breaksAfterSeventyFiveOctets() {
    assertThat(
        ContentLines.folded("SUMMARY:" + "x".repeat(68) + "\r\n"),
        is("SUMMARY:" + "x".repeat(67) + "\r\n x\r\n"));
    // an umlaut takes two octets, a character beyond the basic plane four
    assertThat(
        ContentLines.folded("SUMMARY:" + "x".repeat(66) + "ä\r\n"),
        is("SUMMARY:" + "x".repeat(66) + "\r\n ä\r\n"));
    assertThat(
        ContentLines.folded("SUMMARY:" + "x".repeat(64) + "\ud83d\udc15\r\n"),
        is("SUMMARY:" + "x".repeat(64) + "\r\n \ud83d\udc15\r\n"));
  }

  @Test
  void doesNotBeginALineWithWhiteSpaceOfItsOwn() {
    assertThat(
        ContentLines.folded("SUMMARY:" + "x".repeat(67) + " y\r\n"),
        is("SUMMARY:" + "x".repeat(66) + "\r\n x y\r\n"));
  }

  @Test
  void isUndoneByUnfolding() {
    Random random = new Random(31);
    String[] pieces = {"a", "ä", "㊂", "\ud83d\udc15", " ", "\t", ";", "words and more "};
    for (int i = 0; i < 500; i++) {
      StringBuilder text = new StringBuilder();
      for (int line = 0; line < 3; line++) {
        text.append("SUMMARY:");
        for (int k = random.nextInt(120); k > 0; k--) {
          text.append(pieces[random.nextInt(pieces.length)]);
        }
        text.append("\r\n");
      }
      String folded = ContentLines.folded(text.toString());
      assertThat(folded.replaceAll("\r\n[ \t]", ""), is(text.toString()));
      for (String line : folded.split("\r\n", -1)) {
        assertThat(line.getBytes(StandardCharsets.UTF_8).length, lessThanOrEqualTo(75));
      }
    }
  }
}

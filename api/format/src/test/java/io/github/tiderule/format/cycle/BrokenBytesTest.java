package io.github.tiderule.format.cycle;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import io.github.tiderule.format.Documents;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.format.json.ProblemsJson;
import io.github.tiderule.format.json.Schemas;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Whatever the bytes, a file is read or refused with reasons; nothing is ever thrown. */
class BrokenBytesTest {

  private static final int FILES = 5000;

  @Test
  void areReadOrRefusedWithReasons() {
    byte[] whole = Documents.fullCycle().getBytes(StandardCharsets.UTF_8);
    Random random = new Random(7);
    int refused = 0;
    for (int i = 0; i < FILES; i++) {
      byte[] broken = broken(whole, random);
      if (CycleFile.read(broken) instanceof Reading.Refused refusal) {
        refused++;
        assertThat(refusal.problems().isEmpty(), is(false));
        String json = ProblemsJson.text(refusal.problems(), Layout.ONE_LINE);
        assertThat(json, Schemas.againstProblems(json).isEmpty(), is(true));
      }
    }
    assertThat(refused, is(greaterThan(FILES / 2)));
    assertThat(refused, is(not(FILES)));
  }

  private static byte[] broken(byte[] whole, Random random) {
    byte[] bytes = whole.clone();
    for (int edits = 1 + random.nextInt(3); edits > 0; edits--) {
      int from = random.nextInt(bytes.length);
      int length = random.nextInt(Math.min(40, bytes.length - from));
      switch (random.nextInt(4)) {
        case 0 -> bytes[from] = (byte) random.nextInt(256);
        case 1 -> bytes[from] = (byte) "{}[]\",:0-.eE \\ntu".charAt(random.nextInt(17));
        case 2 -> bytes = joined(bytes, from, from + length);
        default -> bytes = joined(bytes, from + length, from);
      }
    }
    return bytes;
  }

  /** Up to one place, and on from another: what lies between is lost, or stands twice. */
  private static byte[] joined(byte[] bytes, int upTo, int onFrom) {
    ByteArrayOutputStream joined = new ByteArrayOutputStream();
    joined.write(bytes, 0, upTo);
    joined.write(bytes, onFrom, bytes.length - onFrom);
    return joined.toByteArray();
  }
}

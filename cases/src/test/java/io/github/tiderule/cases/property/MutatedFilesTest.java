package io.github.tiderule.cases.property;

import static org.junit.jupiter.api.Assertions.fail;

import io.github.tiderule.cases.corpus.CaseFolder;
import io.github.tiderule.cases.corpus.Corpus;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Cycle files with bytes changed, cut out, doubled or swapped: each is read or refused with a
 * reason, none brings the reader or the engine down.
 */
class MutatedFilesTest {

  private static final List<String> ODD =
      List.of(
          "null",
          "-1",
          "1e308",
          "\"\"",
          "{}",
          "[]",
          "true",
          "NaN",
          "0",
          "1e-320",
          "\"2027-02-30\"",
          "\"-999999999-01-01\"",
          "99999999999999999999",
          "\"ng/mL\"",
          "\\u0000");
  private static final int USUAL_SEEDS = 4000;

  @Test
  void aMangledFileIsReadOrRefused() {
    List<CaseFolder> cases = Corpus.under(Path.of("").toAbsolutePath());
    int seeds = Integer.getInteger("tiderule.seeds", USUAL_SEEDS);
    int advised = 0;
    for (int seed = 1; seed <= seeds; seed++) {
      Random random = new Random(seed);
      byte[] file = cases.get(random.nextInt(cases.size())).cycle();
      for (int i = 1 + random.nextInt(3); i > 0; i--) {
        file = mangled(file, random);
      }
      try {
        Reading reading = CycleFile.read(file);
        // a few of the legal ones also go through the engine
        if (reading instanceof Reading.Read read && advised++ % 10 == 0) {
          Property.ENGINE.advise(read.cycle());
        }
      } catch (RuntimeException | StackOverflowError e) {
        fail("seed " + seed + ": " + e + "\n" + new String(file, StandardCharsets.UTF_8), e);
      }
    }
  }

  private static byte[] mangled(byte[] file, Random random) {
    String text = new String(file, StandardCharsets.UTF_8);
    int from = random.nextInt(text.length());
    int to = Math.min(text.length(), from + random.nextInt(20));
    return switch (random.nextInt(5)) {
      case 0 -> (text.substring(0, from) + text.substring(to)).getBytes(StandardCharsets.UTF_8);
      case 1 -> withByte(file, random);
      case 2 -> (text.substring(0, to) + text.substring(from)).getBytes(StandardCharsets.UTF_8);
      case 3 ->
          text.substring(0, from)
              .concat(text.substring(to))
              .concat(text.substring(from, to))
              .getBytes(StandardCharsets.UTF_8);
      default -> withOddValue(text, random).getBytes(StandardCharsets.UTF_8);
    };
  }

  private static byte[] withByte(byte[] file, Random random) {
    byte[] changed = Arrays.copyOf(file, file.length);
    changed[random.nextInt(changed.length)] = (byte) random.nextInt(256);
    return changed;
  }

  /** One value in place of another: mostly still JSON. */
  private static String withOddValue(String text, Random random) {
    int colon = text.indexOf(": ", random.nextInt(text.length()));
    if (colon < 0) {
      return text;
    }
    int end = colon + 2;
    while (end < text.length() && ",}]\n".indexOf(text.charAt(end)) < 0) {
      end++;
    }
    return text.substring(0, colon + 2) + ODD.get(random.nextInt(ODD.size())) + text.substring(end);
  }
}

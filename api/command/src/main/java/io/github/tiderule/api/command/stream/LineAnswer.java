package io.github.tiderule.api.command.stream;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.json.AdviceJson;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.format.json.ProblemsJson;
import io.github.tiderule.format.problem.Problem;
import io.github.tiderule.format.problem.ProblemCode;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;

/**
 * The answer to one line of many, whoever works through them.
 *
 * @param outcome what came of the line
 * @param text advice, or the problems with the number of the line; one line with its line feed
 */
public record LineAnswer(Outcome outcome, String text) {

  private static final byte[] BYTE_ORDER_MARK = {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};

  /** What came of a line. */
  public enum Outcome {
    /** It is advice. */
    ANSWERED,
    /** The line is no cycle file; the answer says why. */
    REFUSED,
    /** A fault of ours; the answer names it. */
    FAULT
  }

  /**
   * Answers a line. Never throws for what a line holds.
   *
   * @param number number of the line, from 1
   * @param utf8 the line without its line feed
   * @param advise from a cycle to its advice
   */
  public static LineAnswer of(long number, byte[] utf8, Function<CycleRecord, Advice> advise) {
    try {
      Reading reading = CycleFile.read(utf8);
      if (reading instanceof Reading.Refused refused) {
        return new LineAnswer(Outcome.REFUSED, ProblemsJson.ofLine(number, refused.problems()));
      }
      Advice advice = advise.apply(((Reading.Read) reading).cycle());
      return new LineAnswer(Outcome.ANSWERED, AdviceJson.text(advice, Layout.ONE_LINE));
    } catch (RuntimeException | StackOverflowError e) {
      Problem fault =
          Problem.of("", ProblemCode.INTERNAL_FAULT, "a fault of ours: " + Fault.words(e));
      return new LineAnswer(Outcome.FAULT, ProblemsJson.ofLine(number, List.of(fault)));
    }
  }

  /**
   * Whether a line holds nothing but blanks, after a byte order mark or not, and so gets no answer;
   * it is counted all the same.
   */
  public static boolean isBlank(byte[] utf8) {
    int most = BYTE_ORDER_MARK.length;
    boolean marked =
        utf8.length >= most && Arrays.equals(BYTE_ORDER_MARK, Arrays.copyOf(utf8, most));
    for (int i = marked ? most : 0; i < utf8.length; i++) {
      if (utf8[i] != ' ' && utf8[i] != '\t' && utf8[i] != '\r') {
        return false;
      }
    }
    return true;
  }
}

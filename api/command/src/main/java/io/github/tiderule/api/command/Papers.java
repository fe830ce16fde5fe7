package io.github.tiderule.api.command;

import io.github.tiderule.api.paper.BreederSheet;
import io.github.tiderule.api.paper.DaySheet;
import io.github.tiderule.api.paper.PaperSize;
import io.github.tiderule.api.paper.ReferralSummary;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Reasoning;
import io.github.tiderule.rules.RuleBase;
import java.util.Optional;

/** The sheets of paper as files. */
final class Papers {

  private Papers() {}

  /**
   * @param paper the word of a size
   */
  static byte[] sheet(CycleRecord cycle, Reasoning reasoning, String paper) {
    return BreederSheet.pdf(cycle, reasoning, size(paper));
  }

  /**
   * The sheet for the day of insemination; nothing where the answer has none.
   *
   * @param paper the word of a size
   */
  static Optional<byte[]> daySheet(CycleRecord cycle, Reasoning reasoning, String paper) {
    return DaySheet.isIn(reasoning.advice())
        ? Optional.of(DaySheet.pdf(cycle, reasoning.advice(), size(paper)))
        : Optional.empty();
  }

  /**
   * @param paper the word of a size
   */
  static byte[] summary(CycleRecord cycle, Reasoning reasoning, RuleBase rules, String paper) {
    return ReferralSummary.pdf(cycle, reasoning, rules.sources(), size(paper));
  }

  private static PaperSize size(String word) {
    return PaperSize.of(word).orElseThrow();
  }
}

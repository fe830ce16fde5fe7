package io.github.tiderule.api.command;

import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.api.command.stream.Given;
import io.github.tiderule.api.command.stream.Output;
import io.github.tiderule.api.command.stream.Streams;
import io.github.tiderule.api.report.RefusalReport;
import io.github.tiderule.engine.LaboratoryScale;
import io.github.tiderule.engine.LaboratoryScale.Pair;
import io.github.tiderule.format.laboratory.PairTable;
import io.github.tiderule.format.node.Utf8;
import io.github.tiderule.format.problem.Problems;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.parameter.OverlayReader;
import io.github.tiderule.rules.parameter.Parameters;
import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * {@code pairs}: the same blood at two laboratories in, the scale of one of them out, as lines of a
 * local protocol. Nothing works by it until somebody gives it as one.
 */
final class PairsCommand {

  private static final int MOST_BYTES = 1 << 20;
  private static final double NINE_IN_TEN = 1.645;

  private final Streams streams;
  private final Parameters parameters;

  PairsCommand(Streams streams, Parameters parameters) {
    this.streams = streams;
    this.parameters = parameters;
  }

  /**
   * @param method of the laboratory whose scale is asked for
   * @param against method of the other
   * @param by who answers for the proposal
   * @param since from when it would be worked by
   * @throws IOException if something cannot be written
   */
  int run(Given table, Method method, Method against, String by, LocalDate since)
      throws IOException {
    Problems problems = new Problems();
    Optional<List<Pair>> pairs;
    try {
      pairs =
          Utf8.text(table.bytes(streams, MOST_BYTES + 1), MOST_BYTES, problems)
              .flatMap(text -> PairTable.read(text, problems));
    } catch (Given.Unreadable e) {
      new Output(streams.err()).print(e.getMessage() + "\n");
      return ExitStatus.REFUSED;
    }
    if (pairs.isEmpty()) {
      new Output(streams.err()).print(RefusalReport.text(table.words(), problems.all()));
      return ExitStatus.REFUSED;
    }
    LaboratoryScale scale = LaboratoryScale.of(parameters, method, against, pairs.get());
    return switch (scale.outcome()) {
      case PROPOSED -> {
        new Output(streams.out()).print(proposal(scale, by, since));
        yield ExitStatus.DONE;
      }
      case TOO_FEW ->
          refused(
              String.format(
                  Locale.ROOT,
                  "%d pairs count, and %.0f are needed.%s%n",
                  scale.used().size(),
                  parameters.value("timeline.laboratory.least-pairs"),
                  leftOut(scale)));
      case BEYOND_RANGE ->
          refused(
              String.format(
                  Locale.ROOT,
                  "By these pairs %s would read %.2f of radioimmunoassay, which no laboratory of"
                      + " that method was found to. Look for another unit or method.%s%n",
                  method.word(),
                  scale.factor(),
                  leftOut(scale)));
    };
  }

  private int refused(String words) throws IOException {
    new Output(streams.err()).print(words.replace(System.lineSeparator(), "\n"));
    return ExitStatus.REFUSED;
  }

  private static String proposal(LaboratoryScale scale, String by, LocalDate since) {
    double spread = Math.exp(NINE_IN_TEN * scale.logSd());
    StringBuilder text = new StringBuilder();
    text.append(
        String.format(
            Locale.ROOT,
            "# By %d pairs this laboratory (%s) reads %.2f of radioimmunoassay, 9 in 10 from %.2f"
                + " to %.2f.%s\n",
            scale.used().size(),
            scale.method().word(),
            scale.factor(),
            scale.factor() / spread,
            scale.factor() * spread,
            leftOut(scale)));
    text.append(
        "# Only for values of this one laboratory. Accept it by giving this table as --protocol,"
            + " undo it by leaving it out.\n");
    text.append(String.join(",", OverlayReader.HEADING)).append('\n');
    for (LaboratoryScale.Change change : scale.changes()) {
      text.append(change.parameter())
          .append(',')
          .append(change.value())
          .append(',')
          .append("the same blood by ")
          .append(scale.method().word())
          .append(" and by ")
          .append(scale.against().word())
          .append(": ")
          .append(scale.used().size())
          .append(" pairs,")
          .append(cell(by))
          .append(',')
          .append(since)
          .append('\n');
    }
    return text.toString();
  }

  private static String cell(String text) {
    return '"' + text.replace("\"", "\"\"") + '"';
  }

  private static String leftOut(LaboratoryScale scale) {
    return some(scale.odd(), " Far from the others, so left out: pair ")
        + some(scale.low(), " Too low to tell, so left out: pair ");
  }

  private static String some(List<Integer> places, String words) {
    return places.isEmpty()
        ? ""
        : words
            + places.stream()
                .map(place -> String.valueOf(place + 1))
                .collect(Collectors.joining(", "))
            + ".";
  }
}

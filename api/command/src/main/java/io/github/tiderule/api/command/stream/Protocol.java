package io.github.tiderule.api.command.stream;

import io.github.tiderule.format.problem.NearMiss;
import io.github.tiderule.format.problem.Pointer;
import io.github.tiderule.format.problem.Problem;
import io.github.tiderule.format.problem.ProblemCode;
import io.github.tiderule.format.problem.Problems;
import io.github.tiderule.rules.RuleBase;
import io.github.tiderule.rules.parameter.Overlay;
import io.github.tiderule.rules.parameter.OverlayFault;
import io.github.tiderule.rules.parameter.OverlayReader;
import io.github.tiderule.rules.parameter.OverlayReading;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;

/** A clinic's own parameters, given as a file on the command line. */
public final class Protocol {

  private static final int MOST_BYTES = 1 << 20;

  /** The file was read and is wrong. */
  public static final class Refused extends Exception {
    private static final long serialVersionUID = 1L;
    private final transient List<Problem> problems;

    Refused(List<Problem> problems) {
      super(problems.size() + " problems");
      this.problems = problems;
    }

    /** Everything that is wrong with it, in the order of its lines. */
    public List<Problem> problems() {
      return problems;
    }
  }

  private Protocol() {}

  /**
   * Reads a protocol and holds it against the parameters that come with the rules.
   *
   * @throws Given.Unreadable if the file cannot be read
   * @throws Refused if it is no protocol, with everything that is wrong with it
   */
  public static Overlay read(Given file, Streams streams, RuleBase rules)
      throws Given.Unreadable, Refused {
    byte[] bytes;
    try (InputStream in = file.open(streams)) {
      bytes = in.readNBytes(MOST_BYTES + 1);
    } catch (IOException e) {
      throw new Given.Unreadable(file.words() + " cannot be read to its end.");
    }
    if (bytes.length > MOST_BYTES) {
      throw new Refused(
          List.of(
              new Problem(
                  "",
                  ProblemCode.TOO_LARGE,
                  "the protocol is larger than " + MOST_BYTES + " bytes",
                  "Maybe this is not a protocol?")));
    }
    OverlayReading reading = OverlayReader.read(name(file), text(bytes), rules.parameters());
    if (reading instanceof OverlayReading.Read read) {
      return read.overlay();
    }
    throw new Refused(problems(((OverlayReading.Refused) reading).faults(), rules));
  }

  private static String name(Given file) {
    Path name = Path.of(file.name()).getFileName();
    return name == null ? file.name() : name.toString();
  }

  private static String text(byte[] bytes) throws Refused {
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      throw new Refused(
          List.of(Problem.of("", ProblemCode.NOT_UTF8, "the protocol is not encoded as UTF-8")));
    }
  }

  private static List<Problem> problems(List<OverlayFault> faults, RuleBase rules) {
    Problems problems = new Problems();
    for (OverlayFault fault : faults) {
      Pointer at = fault.line() == 0 ? Pointer.ROOT : Pointer.ROOT.child("line " + fault.line());
      problems.add(
          fault.column().isEmpty() ? at : at.child(fault.column()),
          code(fault.kind()),
          fault.message(),
          hint(fault, rules));
    }
    return problems.all();
  }

  private static ProblemCode code(OverlayFault.Kind kind) {
    return switch (kind) {
      case EMPTY -> ProblemCode.EMPTY_FILE;
      case NOT_A_TABLE, WRONG_CELL_COUNT -> ProblemCode.NOT_A_TABLE;
      case WRONG_HEADING -> ProblemCode.WRONG_HEADING;
      case UNKNOWN_PARAMETER -> ProblemCode.UNKNOWN_PARAMETER;
      case REPEATED_PARAMETER -> ProblemCode.DUPLICATE_KEY;
      case NOT_A_NUMBER -> ProblemCode.NOT_A_NUMBER;
      case OUT_OF_RANGE -> ProblemCode.OUT_OF_RANGE;
      case NOT_A_DATE -> ProblemCode.NOT_A_DATE;
      case EMPTY_TEXT -> ProblemCode.EMPTY_TEXT;
      case TOO_LONG -> ProblemCode.TOO_LONG;
      case ILLEGAL_CHARACTER -> ProblemCode.ILLEGAL_CHARACTER;
    };
  }

  private static String hint(OverlayFault fault, RuleBase rules) {
    return switch (fault.kind()) {
      case EMPTY -> "Maybe the table was not saved, or another file was meant?";
      case WRONG_HEADING ->
          fault.given().contains(";")
              ? "Maybe it was saved with semicolons? Save it with commas."
              : "Write the heading as it is, and nothing before it but notes after a #.";
      case NOT_A_TABLE, WRONG_CELL_COUNT ->
          "Maybe a comma in a reason wants quotes around the whole cell?";
      case UNKNOWN_PARAMETER ->
          NearMiss.of(fault.given(), rules.parameters().byId().keySet().stream().sorted().toList())
              .map(id -> "Maybe " + id + "?")
              .orElse("The rulebook command lists every parameter.");
      case REPEATED_PARAMETER -> "Maybe remove one of the two lines?";
      case NOT_A_NUMBER -> "Write it like 1.5, with a point.";
      case OUT_OF_RANGE ->
          "Maybe another unit was meant? Beyond the range the rule itself would be another.";
      case NOT_A_DATE -> "Write it like 2027-01-08.";
      case EMPTY_TEXT -> "Say why, and who answers for it: it is printed with every answer.";
      case TOO_LONG -> "Maybe shorten it?";
      case ILLEGAL_CHARACTER -> "Maybe it came along when the text was pasted?";
    };
  }
}

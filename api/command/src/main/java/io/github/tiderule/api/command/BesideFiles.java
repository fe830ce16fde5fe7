package io.github.tiderule.api.command;

import io.github.tiderule.api.command.stream.Fault;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Reasoning;
import io.github.tiderule.rules.RuleBase;
import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** Files a command writes beside what it prints: a picture or a sheet of paper. */
final class BesideFiles {

  /** Named here too, so that a run without paper loads nothing of it. */
  private static final List<String> PAPERS = List.of("a4", "letter");

  private final List<Beside> files = new ArrayList<>();

  /** One of them, and what makes it. */
  private record Beside(Path file, Making making) {}

  /** Makes the content of a file. What is needed for it is loaded only when it is asked for. */
  private interface Making {
    byte[] of(CycleRecord cycle, Reasoning reasoning, RuleBase rules) throws Unwritable;
  }

  /** A file could not be written; the message is for people. */
  static final class Unwritable extends Exception {
    private static final long serialVersionUID = 1L;

    Unwritable(String message) {
      super(message);
    }
  }

  /**
   * What the options of a command ask for.
   *
   * @throws ParameterException if a file is of no kind there is
   */
  static BesideFiles of(ParseResult parsed) {
    BesideFiles beside = new BesideFiles();
    if (parsed.hasMatchedOption(Specs.CURVE)) {
      Path file = path(parsed, Specs.CURVE, ".svg", ".png");
      boolean png = hasEnding(file, ".png");
      beside.files.add(
          new Beside(
              file,
              (cycle, reasoning, rules) ->
                  png ? Pictures.png(cycle, reasoning) : Pictures.svg(cycle, reasoning)));
    }
    String paper = paper(parsed);
    if (parsed.hasMatchedOption(Specs.SHEET)) {
      beside.files.add(
          new Beside(
              path(parsed, Specs.SHEET, ".pdf"),
              (cycle, reasoning, rules) -> Papers.sheet(cycle, reasoning, paper)));
    }
    if (parsed.hasMatchedOption(Specs.DAY_SHEET)) {
      Path file = path(parsed, Specs.DAY_SHEET, ".pdf");
      beside.files.add(
          new Beside(
              file,
              (cycle, reasoning, rules) ->
                  Papers.daySheet(cycle, reasoning, paper)
                      .orElseThrow(
                          () ->
                              new Unwritable(
                                  file
                                      + " is not written: there is no sheet for the day of"
                                      + " insemination. Maybe the file has no \"insemination\","
                                      + " or the day is not near."))));
    }
    if (parsed.hasMatchedOption(Specs.SUMMARY)) {
      beside.files.add(
          new Beside(
              path(parsed, Specs.SUMMARY, ".pdf"),
              (cycle, reasoning, rules) -> Papers.summary(cycle, reasoning, rules, paper)));
    }
    return beside;
  }

  private static String paper(ParseResult parsed) {
    if (!parsed.hasMatchedOption(Specs.PAPER)) {
      return PAPERS.get(0);
    }
    String paper = parsed.matchedOptionValue(Specs.PAPER, "").toLowerCase(Locale.ROOT);
    if (!PAPERS.contains(paper)) {
      throw new ParameterException(
          parsed.commandSpec().commandLine(),
          "--paper is \"" + paper + "\"; it can be " + String.join(" or ", PAPERS) + ".");
    }
    return paper;
  }

  private static Path path(ParseResult parsed, String option, String... endings) {
    String name = parsed.matchedOptionValue(option, "");
    try {
      Path path = Path.of(name);
      for (String ending : endings) {
        if (hasEnding(path, ending)) {
          return path;
        }
      }
    } catch (InvalidPathException e) {
      // refused below
    }
    throw new ParameterException(
        parsed.commandSpec().commandLine(),
        option + " is \"" + name + "\"; it ends with " + String.join(" or ", endings) + ".");
  }

  private static boolean hasEnding(Path file, String ending) {
    String name = file.toString();
    return name.length() > ending.length()
        && name.regionMatches(true, name.length() - ending.length(), ending, 0, ending.length());
  }

  /**
   * Writes them, none before all are made.
   *
   * @throws Unwritable if one of them cannot be made or written
   */
  void write(CycleRecord cycle, Reasoning reasoning, RuleBase rules) throws Unwritable {
    List<byte[]> contents = new ArrayList<>();
    for (Beside beside : files) {
      contents.add(beside.making().of(cycle, reasoning, rules));
    }
    for (int i = 0; i < files.size(); i++) {
      Beside beside = files.get(i);
      try {
        Files.write(beside.file(), contents.get(i));
      } catch (FileSystemException e) {
        throw new Unwritable(
            beside.file() + " cannot be written. Maybe its directory is missing or not yours.");
      } catch (IOException e) {
        throw new Unwritable(beside.file() + " cannot be written: " + Fault.words(e) + ".");
      }
    }
  }
}

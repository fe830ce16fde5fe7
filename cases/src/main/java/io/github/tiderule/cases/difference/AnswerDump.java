package io.github.tiderule.cases.difference;

import java.io.IOException;
import java.nio.file.Path;
import java.util.SortedMap;
import java.util.TreeMap;

/** Writes every answer of a version of the program into a folder, one text file an answer. */
public final class AnswerDump {

  private AnswerDump() {}

  public static void main(String[] args) throws IOException, ReflectiveOperationException {
    if (args.length < 3) {
      System.err.println("usage: AnswerDump JAR[+PROTOCOL] OUTDIR CASESDIR [--all]");
      System.exit(2);
      return;
    }
    Side side = Side.of(args[0]);
    LoadedProgram program = LoadedProgram.of(side.jar());
    Folder folder = new Folder(Path.of(args[1]));
    CycleAnswers answers = new CycleAnswers(program, side.protocol(), folder);
    for (var one : cases(Path.of(args[2])).entrySet()) {
      answers.write(one.getKey(), one.getValue());
    }
    System.exit(0);
  }

  private static SortedMap<String, String> cases(Path directory) throws IOException {
    SortedMap<String, String> cases = new TreeMap<>();
    AdviceDifference.cycles(directory)
        .forEach(
            (path, text) ->
                cases.put(
                    directory
                        .relativize(Path.of(path))
                        .toString()
                        .replaceFirst("(/cycle)?\\.json$", ""),
                    text));
    return cases;
  }
}

package io.github.tiderule.api.command.stream;

import io.github.tiderule.api.report.RefusalReport;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.node.Node;
import io.github.tiderule.format.node.NodeReader;
import io.github.tiderule.format.node.NodeText;
import io.github.tiderule.format.node.Utf8;
import io.github.tiderule.format.problem.Problem;
import io.github.tiderule.format.problem.Problems;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

/** A cycle file that results are taken into. */
public final class SeasonFile {

  /** A file is refused; nothing was changed. */
  public static final class Refused extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient List<Problem> problems;
    private final String what;

    /** A refusal of what is named, with everything that is wrong with it. */
    public Refused(String what, List<Problem> problems) {
      super(what, null, false, false);
      this.what = what;
      this.problems = problems;
    }

    /** Tells the problems, and gives the exit status. */
    public int print(Streams streams) throws IOException {
      new Output(streams.err()).print(RefusalReport.text(what, problems));
      return ExitStatus.REFUSED;
    }
  }

  private final Given given;
  private final byte[] bytes;
  private final CycleRecord cycle;

  private SeasonFile(Given given, byte[] bytes, CycleRecord cycle) {
    this.given = given;
    this.bytes = bytes;
    this.cycle = cycle;
  }

  /**
   * Reads it.
   *
   * @throws Given.Unreadable if it cannot be read
   * @throws Refused if it is no good cycle file
   */
  public static SeasonFile read(Given given, Streams streams) throws Given.Unreadable, Refused {
    byte[] bytes = given.bytes(streams, CycleFile.MOST_BYTES + 1);
    Reading reading = CycleFile.read(bytes);
    if (reading instanceof Reading.Refused refused) {
      throw new Refused(given.words(), refused.problems());
    }
    return new SeasonFile(given, bytes, ((Reading.Read) reading).cycle());
  }

  /** The cycle as it was read. */
  public CycleRecord cycle() {
    return cycle;
  }

  /** What it is called in messages. */
  public String words() {
    return given.words();
  }

  /**
   * Gives the file other observations, and leaves all else as it was.
   *
   * @param change from the observations as they stand to those that are to stand there
   * @throws Refused if it would no longer be a good cycle file
   * @throws Given.Unreadable if it is no file that can be changed
   */
  public void save(UnaryOperator<List<Node>> change) throws IOException, Refused, Given.Unreadable {
    String text = with(change);
    if (CycleFile.read(text.getBytes(StandardCharsets.UTF_8)) instanceof Reading.Refused refused) {
      throw new Refused(given.words() + ", with what is new,", refused.problems());
    }
    if (given.name().equals(Given.STANDARD_INPUT)) {
      throw new Given.Unreadable("A cycle file from the standard input cannot be changed.");
    }
    replace(Path.of(given.name()).toAbsolutePath(), text);
  }

  private String with(UnaryOperator<List<Node>> change) {
    Problems problems = new Problems();
    Node file =
        Utf8.text(bytes, CycleFile.MOST_BYTES, problems)
            .flatMap(text -> NodeReader.read(text, problems))
            .orElseThrow();
    Node.Members members = (Node.Members) file;
    Map<String, Node> fields = new LinkedHashMap<>(members.byKey());
    List<Node> observations = new ArrayList<>(members.entries("observations"));
    fields.put("observations", new Node.Entries(change.apply(observations)));
    return NodeText.indented(new Node.Members(fields));
  }

  /** All of it or nothing, whatever happens meanwhile. */
  private static void replace(Path file, String text) throws IOException {
    Path whole = file.toRealPath();
    Path fresh = Files.createTempFile(whole.getParent(), "tiderule", ".json");
    try {
      // a temporary file is its owner's alone; the cycle file stays as open as it was
      Files.copy(
          whole, fresh, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.COPY_ATTRIBUTES);
      Files.writeString(fresh, text);
      Files.move(fresh, whole, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(fresh);
    }
  }
}

package io.github.tiderule.api.command;

import io.github.tiderule.api.command.stream.CycleFiles;
import io.github.tiderule.api.command.stream.Engine;
import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.api.command.stream.Given;
import io.github.tiderule.api.command.stream.InputLines;
import io.github.tiderule.api.command.stream.Output;
import io.github.tiderule.api.command.stream.Streams;
import io.github.tiderule.api.report.StudReport;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.StudPlan;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.format.json.StudJson;
import java.io.IOException;
import java.io.InputStream;
import java.time.Instant;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** {@code stud}: shares the services of one stud among several females. */
final class StudCommand {

  /** More females than one stud serves in one week. */
  private static final int MOST_FEMALES = 20;

  private final Streams streams;
  private final Supplier<Engine> engine;
  private final boolean json;
  private final CycleFiles files;
  private final Map<String, CycleRecord> cycles = new LinkedHashMap<>();

  StudCommand(Streams streams, Supplier<Engine> engine, boolean json) {
    this.streams = streams;
    this.engine = engine;
    this.json = json;
    this.files = new CycleFiles(streams, json);
  }

  /**
   * Reads the females and shares the services.
   *
   * @param lines whether each file holds cycle files one a line
   * @throws IOException if the answer cannot be written
   */
  int run(List<Given> given, boolean lines, List<Instant> services) throws IOException {
    if (services.isEmpty() || services.size() > StudPlan.MOST_SERVICES) {
      return files.refuse("--services takes from 1 to " + StudPlan.MOST_SERVICES + " moments.");
    }
    for (Given file : given) {
      boolean read = lines ? readLines(file) : read(file);
      if (!read) {
        return ExitStatus.REFUSED;
      }
    }
    if (cycles.isEmpty()) {
      return files.refuse("There is no female in " + given.get(0).words() + ".");
    }
    return share(services);
  }

  /**
   * Shares the services among females of the record.
   *
   * @param named their present seasons, by what they are called
   * @throws IOException if the answer cannot be written
   */
  int run(Map<String, CycleRecord> named, List<Instant> services) throws IOException {
    if (services.isEmpty() || services.size() > StudPlan.MOST_SERVICES) {
      return files.refuse("--services takes from 1 to " + StudPlan.MOST_SERVICES + " moments.");
    }
    if (named.size() > MOST_FEMALES) {
      return files.refuse("More than " + MOST_FEMALES + " females for one stud.");
    }
    cycles.putAll(named);
    return share(services);
  }

  private int share(List<Instant> services) throws IOException {
    List<Instant> ordered = services.stream().sorted().distinct().toList();
    StudPlan plan;
    try {
      plan = engine.get().shareStud().apply(cycles, ordered);
    } catch (IllegalArgumentException e) {
      return files.refuse("It cannot be done: " + e.getMessage() + ".");
    }
    ZoneId zone = cycles.values().iterator().next().zone();
    new Output(streams.out())
        .print(json ? StudJson.text(plan, zone, Layout.INDENTED) : StudReport.text(plan, zone));
    return ExitStatus.DONE;
  }

  private boolean read(Given file) throws IOException {
    Optional<CycleRecord> cycle = files.read(file, null);
    return cycle.isPresent() && add(cycle.get(), file.words());
  }

  private boolean readLines(Given file) throws IOException {
    try (InputStream in = file.open(streams)) {
      InputLines lines = new InputLines(in, CycleFile.MOST_BYTES);
      int number = 0;
      for (byte[] line = lines.next(); line != null; line = lines.next()) {
        number++;
        if (!new String(line, java.nio.charset.StandardCharsets.UTF_8).isBlank()) {
          String words = "line " + number + " of " + file.words();
          Optional<CycleRecord> cycle = files.accepted(words, CycleFile.read(line));
          if (cycle.isEmpty() || !add(cycle.get(), words)) {
            return false;
          }
        }
      }
      return true;
    } catch (Given.Unreadable e) {
      files.refuse(e.getMessage());
      return false;
    }
  }

  private boolean add(CycleRecord cycle, String words) throws IOException {
    @Nullable String id = cycle.female().id();
    if (id == null) {
      files.refuse("The female of " + words + " has no id; each needs one of her own.");
      return false;
    }
    if (cycles.put(id, cycle) != null) {
      files.refuse("The female " + id + " is given twice, the second time in " + words + ".");
      return false;
    }
    if (cycles.size() > MOST_FEMALES) {
      files.refuse("More than " + MOST_FEMALES + " females for one stud.");
      return false;
    }
    return true;
  }
}

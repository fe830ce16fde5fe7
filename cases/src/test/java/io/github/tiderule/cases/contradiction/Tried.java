package io.github.tiderule.cases.contradiction;

import io.github.tiderule.cases.Nightly;
import io.github.tiderule.cases.cohort.CohortCycles;
import io.github.tiderule.cases.corpus.CaseFolder;
import io.github.tiderule.cases.corpus.Corpus;
import io.github.tiderule.cases.odd.OddCycles;
import io.github.tiderule.cases.property.RandomCycle;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * A season with its answer.
 *
 * @param name where it is found
 */
record Tried(String name, CycleRecord cycle, Advice advice) {

  private static final int TIMES = Nightly.of(1, 9);
  private static final int RANDOM = 36;
  private static final int COHORT = 36;
  private static final int ODD = 1;
  private static final int MUTATED = 60;

  /** Shares no factor with the number of cases, so that all of them come in turn. */
  private static final int MUTATED_STEP = 37;

  private static final long SEED = 7;

  private record Named(String name, byte[] file) {}

  /**
   * Every third case, every demonstration, and a sample of the cohorts, of odd seasons, of random
   * ones and of cases with something changed in them; by night every case, and nine times as large
   * a sample.
   */
  static List<Tried> all() {
    List<Named> files = new ArrayList<>();
    List<CaseFolder> folders = Corpus.under(Path.of("").toAbsolutePath());
    for (int i = 0; i < folders.size(); i += Nightly.of(5, 1)) {
      files.add(new Named(folders.get(i).name(), folders.get(i).cycle()));
    }
    demonstrations().forEach(files::add);
    List<String> cohort = CohortCycles.lines(TIMES * COHORT, SEED);
    for (int i = 0; i < cohort.size(); i++) {
      files.add(new Named("cohort " + i, bytes(cohort.get(i))));
    }
    for (int seed = 1; seed <= TIMES * RANDOM; seed++) {
      files.add(new Named("random " + seed, bytes(RandomCycle.of(seed).toString())));
    }
    for (int i = 0; i < TIMES * MUTATED; i++) {
      CaseFolder folder = folders.get(Math.floorMod(MUTATED_STEP * i, folders.size()));
      files.add(new Named("mutated " + i + " of " + folder.name(), Mutated.of(folder.cycle(), i)));
    }
    List<OddCycles.Told> cycles = new ArrayList<>(OddCycles.of(SEED, TIMES * ODD));
    for (Named one : files) {
      if (CycleFile.read(one.file()) instanceof Reading.Read read) {
        cycles.add(new OddCycles.Told(one.name(), read.cycle()));
      }
    }
    Tiderule engine = Tiderule.create();
    return cycles.parallelStream()
        .map(one -> new Tried(one.name(), one.cycle(), engine.advise(one.cycle())))
        .toList();
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static List<Named> demonstrations() {
    try (Stream<Path> paths = Files.list(Path.of("demo"))) {
      return paths
          .filter(path -> path.toString().endsWith(".json"))
          .sorted()
          .map(path -> new Named(path.toString(), read(path)))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static byte[] read(Path path) {
    try {
      return Files.readAllBytes(path);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

package io.github.tiderule.cases.library;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.is;

import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.Tiderule;
import io.github.tiderule.format.cycle.CycleFile;
import io.github.tiderule.format.cycle.Reading;
import io.github.tiderule.format.json.AdviceJson;
import io.github.tiderule.format.json.Layout;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The engine as other programs use it. */
class LibraryTest {

  private static final int THREADS = 8;
  private static final int ROUNDS = 4;

  private static List<CycleRecord> demonstrations() throws IOException {
    List<CycleRecord> cycles = new ArrayList<>();
    try (Stream<Path> files = Files.list(Path.of("demo"))) {
      for (Path file : files.filter(one -> one.toString().endsWith(".json")).sorted().toList()) {
        cycles.add(((Reading.Read) CycleFile.read(Files.readAllBytes(file))).cycle());
      }
    }
    return cycles;
  }

  private static String answer(Tiderule tiderule, CycleRecord cycle) {
    return AdviceJson.text(tiderule.advise(cycle), Layout.ONE_LINE);
  }

  @Test
  void eightThreadsGetTheSameBytesAsOne() throws Exception {
    List<CycleRecord> cycles = demonstrations();
    assertThat(cycles.size(), greaterThan(4));
    Tiderule tiderule = Tiderule.create();
    List<String> alone = cycles.stream().map(cycle -> answer(tiderule, cycle)).toList();
    ExecutorService threads = Executors.newFixedThreadPool(THREADS);
    List<Future<List<String>>> together = new ArrayList<>();
    for (int thread = 0; thread < THREADS; thread++) {
      Random random = new Random(thread);
      together.add(threads.submit(() -> inAnyOrder(tiderule, cycles, random)));
    }
    for (Future<List<String>> one : together) {
      assertThat(one.get(), is(alone));
    }
    threads.shutdown();
  }

  private static List<String> inAnyOrder(
      Tiderule tiderule, List<CycleRecord> cycles, Random random) {
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < cycles.size() * ROUNDS; i++) {
      order.add(i % cycles.size());
    }
    Collections.shuffle(order, random);
    List<String> answers = new ArrayList<>(Collections.nCopies(cycles.size(), ""));
    for (int place : order) {
      answers.set(place, answer(tiderule, cycles.get(place)));
    }
    return answers;
  }

  @Test
  void twoEnginesKnowNothingOfEachOther() throws IOException {
    List<CycleRecord> cycles = demonstrations();
    Tiderule one = Tiderule.create();
    Tiderule other = Tiderule.create();
    cycles.forEach(cycle -> answer(one, cycle));
    assertThat(answer(other, cycles.get(0)), is(answer(one, cycles.get(0))));
  }

  @Test
  void itLeavesNoThreadBehind() throws IOException {
    Set<Thread> before = new HashSet<>(Thread.getAllStackTraces().keySet());
    Tiderule tiderule = Tiderule.create();
    demonstrations().forEach(cycle -> answer(tiderule, cycle));
    List<String> left =
        Thread.getAllStackTraces().keySet().stream()
            .filter(thread -> !before.contains(thread) && !thread.isDaemon())
            .map(Thread::getName)
            .toList();
    assertThat(left, is(List.of()));
  }
}

package io.github.tiderule.api.command;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.emptyString;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThan;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.engine.CycleRecord;
import io.github.tiderule.engine.advice.Advice;
import io.github.tiderule.format.Documents;
import io.github.tiderule.format.SampleAdvice;
import io.github.tiderule.format.json.Schemas;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.io.SequenceInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

class BatchTest {

  private static String line(String id) {
    return Documents.cycleWith("")
        .replace("\"firstBlood\"", "\"female\": {\"id\": \"" + id + "\"}, \"firstBlood\"")
        .replace("\n", " ");
  }

  /** Advice that carries the id it was asked about; some of it comes late. */
  private static Advice answer(CycleRecord cycle) {
    String id = Objects.requireNonNull(cycle.female().id());
    if (id.startsWith("slow")) {
      pause();
    }
    if (id.startsWith("fault")) {
      throw new IllegalStateException("cannot do " + id);
    }
    if (id.startsWith("deep")) {
      throw new StackOverflowError();
    }
    Advice empty = SampleAdvice.empty();
    return Advice.of(empty.stamp(), empty.asOf(), empty.validUntil(), id, empty.action());
  }

  private static void pause() {
    try {
      Thread.sleep(30);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  private static List<JsonNode> documents(String out) throws IOException {
    List<JsonNode> documents = new ArrayList<>();
    for (String line : out.split("\n", -1)) {
      if (!line.isEmpty()) {
        documents.add(new ObjectMapper().readTree(line));
      }
    }
    return documents;
  }

  @Test
  void answersInOrderThoughSomeComeLate() throws IOException {
    String input =
        IntStream.range(0, 500)
            .mapToObj(i -> line((i % 50 == 0 ? "slow" : "f") + i))
            .collect(Collectors.joining("\n"));
    Ran ran = Ran.withEngine(BatchTest::answer, input, "batch", "-");
    List<JsonNode> documents = documents(ran.out());
    assertThat(ran.status(), is(ExitStatus.DONE));
    assertThat(documents.size(), is(500));
    for (int i = 0; i < 500; i++) {
      assertThat(documents.get(i).get("femaleId").asText(), is((i % 50 == 0 ? "slow" : "f") + i));
    }
    assertThat(ran.engines(), is(1));
  }

  @Test
  void aBadLineStopsNothing() throws IOException {
    String input =
        String.join("\n", line("a"), "", "  \t\r", "{\"oops\"", line("b") + "\r", "[]", line("c"));
    Ran ran = Ran.withEngine(BatchTest::answer, input, "batch");
    List<JsonNode> documents = documents(ran.out());
    assertThat(ran.status(), is(ExitStatus.SOME_REFUSED));
    assertThat(
        documents.stream().map(d -> d.at("/femaleId").asText() + d.at("/line").asText()).toList(),
        is(List.of("a", "4", "b", "6", "c")));
    assertThat(documents.get(1).at("/problems/0/code").asText(), is("not-json"));
    for (int refused : List.of(1, 3)) {
      assertThat(Schemas.againstProblems(documents.get(refused).toString()), is(List.of()));
    }
    assertThat(ran.err(), is(emptyString()));
  }

  @Test
  void aFaultInOneLineStopsNothingButIsTold() throws IOException {
    String input = String.join("\n", line("a"), line("fault"), "no", line("deep"), line("b"));
    Ran ran = Ran.withEngine(BatchTest::answer, input, "batch");
    List<JsonNode> documents = documents(ran.out());
    assertThat(ran.status(), is(ExitStatus.FAULT));
    assertThat(documents.size(), is(5));
    assertThat(documents.get(1).at("/problems/0/code").asText(), is("internal-fault"));
    assertThat(documents.get(1).at("/line").asInt(), is(2));
    assertThat(documents.get(3).at("/problems/0/code").asText(), is("internal-fault"));
    assertThat(documents.get(4).at("/femaleId").asText(), is("b"));
    assertThat(Schemas.againstProblems(documents.get(1).toString()), is(List.of()));
    assertThat(ran.err(), containsString("Please report it."));
  }

  @Test
  void anEmptyBatchIsDone() {
    Ran ran = Ran.withEngine(BatchTest::answer, "\n\n", "batch");
    assertThat(ran.status(), is(ExitStatus.DONE));
    assertThat(ran.out(), is(emptyString()));
    assertThat(ran.engines(), is(0));
  }

  @Test
  void anEndlessLineIsRefusedAndTheNextOneRead() throws IOException {
    InputStream endless =
        new SequenceInputStream(
            Collections.enumeration(
                List.of(
                    new RepeatedInput(new byte[] {'['}, 50_000_000),
                    new ByteArrayInputStream(
                        ("\n" + line("after")).getBytes(StandardCharsets.UTF_8)))));
    Ran ran = Ran.run(BatchTest::answer, endless, new ByteArrayOutputStream(), "batch");
    List<JsonNode> documents = documents(ran.out());
    assertThat(documents.get(0).at("/problems/0/code").asText(), is("too-large"));
    assertThat(documents.get(1).at("/femaleId").asText(), is("after"));
  }

  @Test
  void holdsOnlySoManyLines() {
    int lines = 20_000;
    String text = line("f") + "\n";
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    RepeatedInput in = new RepeatedInput(bytes, lines);
    AtomicLong written = new AtomicLong();
    AtomicLong mostAhead = new AtomicLong();
    OutputStream out =
        new OutputStream() {
          @Override
          public void write(int one) {
            if (one == '\n') {
              mostAhead.accumulateAndGet(in.timesRead() - written.incrementAndGet(), Math::max);
            }
          }
        };
    Ran ran = Ran.run(BatchTest::answer, in, out, "batch");
    assertThat(ran.status(), is(ExitStatus.DONE));
    assertThat(written.get(), is((long) lines));
    // 64 held, and what fits into the buffers of 64 KiB at either end
    assertThat(mostAhead.get(), is(lessThan(64L + 65_536 / bytes.length + 65_536 / 300 + 2)));
  }

  @Test
  @Timeout(value = 30, unit = TimeUnit.SECONDS)
  void answersALineBeforeTheNextOneIsSent() throws Exception {
    PipedOutputStream feed = new PipedOutputStream();
    PipedInputStream in = new PipedInputStream(feed, 1 << 16);
    PipedInputStream answers = new PipedInputStream(1 << 16);
    PipedOutputStream out = new PipedOutputStream(answers);
    CompletableFuture<Ran> run =
        CompletableFuture.supplyAsync(() -> Ran.run(BatchTest::answer, in, out, "batch"));
    for (String id : List.of("one", "two")) {
      feed.write((line(id) + "\n").getBytes(StandardCharsets.UTF_8));
      feed.flush();
      StringBuilder answer = new StringBuilder();
      for (int next = answers.read(); next != '\n'; next = answers.read()) {
        answer.append((char) next);
      }
      assertThat(documents(answer.toString()).get(0).get("femaleId").asText(), is(id));
    }
    feed.close();
    assertThat(run.get(20, TimeUnit.SECONDS).status(), is(ExitStatus.DONE));
  }

  @Test
  void aReaderWhoLeavesEndsItQuietly() {
    OutputStream broken =
        new OutputStream() {
          @Override
          public void write(int one) throws IOException {
            throw new IOException("Broken pipe");
          }
        };
    InputStream in = new ByteArrayInputStream(line("a").getBytes(StandardCharsets.UTF_8));
    Ran ran = Ran.run(BatchTest::answer, in, broken, "batch");
    assertThat(ran.status(), is(ExitStatus.DONE));
    assertThat(ran.err(), is(emptyString()));
  }
}

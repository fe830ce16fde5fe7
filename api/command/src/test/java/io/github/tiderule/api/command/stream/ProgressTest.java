package io.github.tiderule.api.command.stream;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.emptyString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class ProgressTest {

  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private final AtomicLong now = new AtomicLong(17);

  private Streams streams(boolean watched) {
    return new Streams(
        new ByteArrayInputStream(new byte[0]), new ByteArrayOutputStream(), err, watched);
  }

  private String told() {
    return err.toString(StandardCharsets.UTF_8);
  }

  private void pass(Progress progress, int seconds) throws IOException {
    progress.read(100);
    now.addAndGet(Duration.ofSeconds(seconds).toNanos());
    progress.answered();
  }

  @Test
  void tellsAWatcherHowFarItIsAndHowLongItTakes() throws IOException {
    Progress progress = Progress.of(streams(true), 1000, now::get);
    pass(progress, 2);
    assertThat(told(), endsWith("1 line, 1 a second, 10 %, 18 s left"));
    pass(progress, 998);
    assertThat(told(), endsWith("2 lines, 0 a second, 20 %, 67 min left"));
    pass(progress, 59_000);
    assertThat(told(), endsWith("3 lines, 0 a second, 30 %, 39 h left"));
    progress.end();
    assertThat(told(), endsWith("\r\u001b[K"));
  }

  @Test
  void speaksAtMostOnceASecond() throws IOException {
    Progress progress = Progress.of(streams(true), 1000, now::get);
    for (int i = 0; i < 100; i++) {
      now.addAndGet(Duration.ofMillis(30).toNanos());
      progress.answered();
    }
    assertThat(told().split("\r", -1).length - 1, is(2));
  }

  @Test
  void saysNothingOfTheRestWhereTheSizeIsNotKnown() throws IOException {
    Progress progress = Progress.of(streams(true), 0, now::get);
    pass(progress, 2);
    assertThat(told(), containsString("1 line, 1 a second"));
    assertThat(told(), not(containsString("left")));
  }

  @Test
  void keepsStillWhereNobodyWatches() throws IOException {
    Progress progress = Progress.of(streams(false), 1000, now::get);
    pass(progress, 20);
    progress.end();
    assertThat(told(), is(emptyString()));
  }

  @Test
  void aShortRunNeedsNone() throws IOException {
    Progress progress = Progress.of(streams(true), 1000, now::get);
    progress.answered();
    progress.end();
    assertThat(told(), is(emptyString()));
  }
}

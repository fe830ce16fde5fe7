package io.github.tiderule.api.fault;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThan;

import io.github.tiderule.api.record.store.Address;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The disk the record is on fills up, and has room again later. */
class DiskFullTest {

  private static final int MOST_WRITES = 20_000;
  private static final int WRITES_A_SEASON = 100;
  private static final int TRIED = Fault.atLength() ? 100 : 10;
  private static final Duration SOON = Duration.ofSeconds(30);

  @TempDir private Path directory = Path.of("");

  @Test
  void aFullDiskRefusesChangesAndLosesNothing() throws Exception {
    Path disk = Files.createDirectory(directory.resolve("disk"));
    mount(disk);
    try {
      fill(disk);
    } finally {
      run("umount", disk.toString());
    }
  }

  private void fill(Path disk) throws Exception {
    String data = disk.resolve("record").toString();
    Notebook notebook = new Notebook(Instant.now());
    try (ProcessOfOurs ours = ProcessOfOurs.serve(data, directory.resolve("full.err"))) {
      Client client = ours.client();
      String season = notebook.season(client);
      Client.Got got = notebook.add(client, season);
      for (int i = 1; got.status() == 201; i++) {
        assertThat("the disk does not fill", i, lessThan(MOST_WRITES));
        if (i % WRITES_A_SEASON == 0) {
          // an advice is far larger than an observation
          Client.Got advice = client.post(Notebook.advice(season), "{}");
          notebook.noteAdvice(season, advice);
          if (advice.status() == 201) {
            season = notebook.season(client);
          }
        }
        got = notebook.add(client, season);
      }
      int before = notebook.acknowledged();
      assertThat(got.toString(), got.isSentAway());
      int refused = 1;
      for (int i = 1; i < TRIED; i++) {
        got = notebook.add(client, season);
        // what little is given back when a change is undone can be enough for a small one
        assertThat(got.toString(), got.status() == 201 || got.isSentAway());
        refused += got.status() == 201 ? 0 : 1;
        client.get(Notebook.observations(season)).mustBe(200);
      }
      run("mount", "-o", "remount,size=64m", disk.toString());
      Instant roomy = Instant.now();
      while (notebook.add(client, season).status() != 201) {
        assertThat(Duration.between(roomy, Instant.now()), lessThan(SOON));
        Thread.sleep(50);
      }
      long millis = Duration.between(roomy, Instant.now()).toMillis();
      assertThat(ours.isAlive(), is(true));
      ours.stop();
      notebook.mustBeIn(Address.of(data));
      Fault.DISK_FULL.seen(
          before
              + " acknowledged writes until the disk (6 MiB) was full; then "
              + refused
              + " of "
              + TRIED
              + " tried were refused with 503 and Retry-After, the others still had room and were kept;"
              + " every reading answered; after room was made, the first change went through in "
              + millis
              + " ms, without a restart; everything acknowledged there, integrity check ok.");
    }
  }

  private static void mount(Path disk) throws IOException, InterruptedException {
    boolean root = "root".equals(System.getProperty("user.name"));
    Assumptions.assumeTrue(root, "only root can mount a small disk to be filled");
    boolean mounted =
        new ProcessBuilder(
                    "mount", "-t", "tmpfs", "-o", "size=6m", "tiderule-disk", disk.toString())
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start()
                .waitFor()
            == 0;
    Assumptions.assumeTrue(mounted, "this machine lets nobody mount a small disk to be filled");
  }

  private static void run(String... command) throws IOException, InterruptedException {
    int status = new ProcessBuilder(command).inheritIO().start().waitFor();
    assertThat(List.of(command).toString(), status, is(0));
  }
}

package io.github.tiderule.api.service;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThan;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;

import io.github.tiderule.api.service.http.Settings;
import io.github.tiderule.format.Documents;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** What the service takes on, and how it stops. */
class LimitsTest {

  private static final Settings.Limits ONE_AT_A_TIME =
      new Settings.Limits(
          16,
          12,
          16,
          1,
          2,
          Duration.ofSeconds(1),
          Duration.ofMillis(1500),
          Duration.ofMillis(200),
          Duration.ofSeconds(30),
          500,
          Duration.ofSeconds(20));

  private static void await(CountDownLatch latch) {
    try {
      assertThat(latch.await(30, TimeUnit.SECONDS), is(true));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  @Test
  void whoWaitsTooLongForATurnIsToldToComeAgain() {
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch end = new CountDownLatch(1);
    try (Desk desk =
        Desk.limited(
            ONE_AT_A_TIME,
            cycle -> {
              begun.countDown();
              await(end);
              return Desk.TIDERULE.advise(cycle);
            })) {
      CompletableFuture<Asker.Got> first =
          CompletableFuture.supplyAsync(
              () -> desk.asker().post("/v1/advice", Documents.cycleWith("")));
      await(begun);
      Asker.Got second = desk.asker().post("/v1/advice", Documents.cycleWith("")).mustBe(503);
      assertThat(second.header("Retry-After"), is("1"));
      desk.asker().get("/v1/health").mustBe(200);
      end.countDown();
      first.join().mustBe(200);
    }
  }

  @Test
  void whatWasTakenIsFinishedBeforeTheServiceStops() {
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch end = new CountDownLatch(1);
    Desk desk =
        Desk.limited(
            ONE_AT_A_TIME,
            cycle -> {
              begun.countDown();
              await(end);
              return Desk.TIDERULE.advise(cycle);
            });
    CompletableFuture<Asker.Got> taken =
        CompletableFuture.supplyAsync(
            () -> desk.asker().post("/v1/advice", Documents.cycleWith("")));
    await(begun);
    CompletableFuture<Void> stopped = CompletableFuture.runAsync(desk::close);
    assertThat(stopped.completeOnTimeout(null, 1, TimeUnit.SECONDS).isDone(), is(false));
    assertThat(taken.isDone(), is(false));
    end.countDown();
    taken.join().mustBe(200);
    stopped.join();
  }

  @Test
  void aFaultOfOursIsToldWithoutItsInsides() {
    try (Desk desk =
        Desk.limited(
            ONE_AT_A_TIME,
            cycle -> {
              throw new IllegalStateException("inside");
            })) {
      assertThat(
          raw(desk, "POST /v1/advice HTTP/1.1", Documents.cycleWith("")),
          startsWith("HTTP/1.1 500"));
      assertThat(desk.faults.toString(), containsString("inside"));
    }
  }

  private static String raw(Desk desk, String line, String body) {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), desk.service.port())) {
      byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
      String head =
          line
              + "\r\nHost: localhost:"
              + desk.service.port()
              + "\r\nContent-Type: application/json\r\nConnection: close\r\nContent-Length: "
              + bytes.length
              + "\r\n\r\n";
      socket.getOutputStream().write(head.getBytes(StandardCharsets.US_ASCII));
      socket.getOutputStream().write(bytes);
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void whatIsNoRequestIsRefusedLikeAnyOther() {
    try (Desk desk = Desk.open()) {
      for (String line :
          List.of("GET /v1/%zz HTTP/1.1", "GET /v1/females/..%2f..%2f HTTP/1.1", "nonsense")) {
        String answer = raw(desk, line, "");
        assertThat(line + answer, answer, containsString("application/problem+json"));
        assertThat(answer, startsWith("HTTP/1.1 4"));
        assertThat(answer, not(containsString("jetty")));
      }
    }
  }

  @Test
  void whoStopsSpeakingHalfWayIsNotWaitedForLong() throws Exception {
    try (Desk desk = Desk.limited(ONE_AT_A_TIME, Desk.TIDERULE::advise);
        Socket socket = new Socket(InetAddress.getLoopbackAddress(), desk.service.port())) {
      String half =
          "POST /v1/advice HTTP/1.1\r\nHost: localhost:"
              + desk.service.port()
              + "\r\nContent-Type: application/json\r\nContent-Length: 1000\r\n\r\n{";
      long from = System.nanoTime();
      socket.getOutputStream().write(half.getBytes(StandardCharsets.US_ASCII));
      socket.setSoTimeout(20_000);
      socket.getInputStream().readAllBytes();
      assertThat(System.nanoTime() - from, lessThan(TimeUnit.SECONDS.toNanos(15)));
      desk.asker().get("/v1/health").mustBe(200);
    }
  }

  private static Socket open(Desk desk) throws IOException {
    return new Socket(InetAddress.getLoopbackAddress(), desk.service.port());
  }

  private static void send(Socket socket, String text) throws IOException {
    socket.getOutputStream().write(text.getBytes(StandardCharsets.US_ASCII));
  }

  @Test
  void whoSendsTheHeadByteForByteIsCutOffAndOthersAreServedMeanwhile() throws Exception {
    try (Desk desk = Desk.limited(ONE_AT_A_TIME, Desk.TIDERULE::advise)) {
      List<Socket> slow = new ArrayList<>();
      for (int i = 0; i < 40; i++) {
        Socket socket = open(desk);
        slow.add(socket);
        send(socket, "G");
      }
      desk.asker().get("/v1/health").mustBe(200);
      Socket last = slow.get(slow.size() - 1);
      long from = System.nanoTime();
      String cut = "";
      while (cut.isEmpty() && System.nanoTime() - from < TimeUnit.SECONDS.toNanos(10)) {
        try {
          send(last, "E");
          Thread.sleep(200);
        } catch (IOException e) {
          cut = String.valueOf(e.getMessage());
        }
      }
      assertThat(cut.isEmpty(), is(false));
      desk.asker().get("/v1/health").mustBe(200);
      for (Socket socket : slow) {
        socket.close();
      }
    }
  }

  @Test
  void whoDoesNotTakeTheAnswerIsCutOff() throws Exception {
    Settings.Limits limits =
        new Settings.Limits(
            16,
            12,
            20,
            1,
            2,
            Duration.ofSeconds(2),
            Duration.ofSeconds(2),
            Duration.ofMillis(200),
            Duration.ofSeconds(30),
            1_000_000,
            Duration.ofSeconds(20));
    try (Desk desk = Desk.limited(limits, Desk.TIDERULE::advise);
        Socket socket = new Socket()) {
      socket.setReceiveBufferSize(4096);
      socket.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), desk.service.port()));
      String ask =
          "GET /v1/rulebook HTTP/1.1\r\nHost: localhost:" + desk.service.port() + "\r\n\r\n";
      send(socket, ask.repeat(40));
      byte[] some = new byte[2000];
      long from = System.nanoTime();
      boolean over = false;
      long taken = 0;
      while (!over && System.nanoTime() - from < TimeUnit.SECONDS.toNanos(20)) {
        int read;
        try {
          read = socket.getInputStream().read(some);
        } catch (IOException e) {
          read = -1;
        }
        taken += Math.max(read, 0);
        over = read < 0;
        Thread.sleep(System.nanoTime() - from < TimeUnit.SECONDS.toNanos(6) ? 200 : 0);
      }
      assertThat(over, is(true));
      int whole = desk.asker().get("/v1/rulebook").mustBe(200).body().length();
      assertThat(taken, lessThan(40L * whole));
    }
  }

  @Test
  void whatTakesTooLongIsGivenUpAndLeavesItsPlace() {
    Settings.Limits limits =
        new Settings.Limits(
            16,
            12,
            20,
            1,
            2,
            Duration.ofSeconds(5),
            Duration.ofSeconds(5),
            Duration.ofSeconds(5),
            Duration.ofNanos(1),
            500,
            Duration.ofSeconds(20));
    try (Desk desk = Desk.limited(limits, Desk.TIDERULE::advise)) {
      for (int i = 0; i < 4; i++) {
        Asker.Got got = desk.asker().post("/v1/advice", Documents.cycleWith("")).mustBe(503);
        assertThat(got.header("Retry-After"), is("60"));
        assertThat(got.text("/type"), containsString("too-long"));
      }
      desk.asker().get("/v1/health").mustBe(200);
      assertThat(desk.faults, is(List.of()));
    }
  }
}

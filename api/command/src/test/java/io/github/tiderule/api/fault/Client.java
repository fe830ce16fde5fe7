package io.github.tiderule.api.fault;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.concurrent.CompletableFuture;

/** Asks a serving process, plainly and fast: what comes back is not held to the contract here. */
final class Client {

  private static final Duration LONGEST = Duration.ofSeconds(60);

  /** An answer. */
  record Got(int status, String body, String retryAfter, String location) {

    /** Whether it was sent away in the way that says when to come again. */
    boolean isSentAway() {
      return status == 503 && retryAfter.matches("[1-9][0-9]*");
    }

    /** The key of what was made. */
    String key() {
      return location.replaceFirst(".*/", "");
    }

    Got mustBe(int wanted) {
      if (status != wanted) {
        throw new AssertionError("answered " + status + ", not " + wanted + ": " + body);
      }
      return this;
    }
  }

  /** Of this client alone: a later process can have the port of one that is gone. */
  private final HttpClient http =
      HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

  private final String base;

  Client(int port) {
    base = "http://127.0.0.1:" + port;
  }

  private HttpRequest.Builder request(String path) {
    return HttpRequest.newBuilder(URI.create(base + path)).timeout(LONGEST);
  }

  private HttpRequest posting(String path, String json) {
    return request(path)
        .header("Content-Type", "application/json")
        .POST(HttpRequest.BodyPublishers.ofString(json))
        .build();
  }

  /**
   * @throws UncheckedIOException if no answer comes
   */
  Got get(String path) {
    return send(request(path).build());
  }

  /**
   * @throws UncheckedIOException if no answer comes
   */
  Got post(String path, String json) {
    return send(posting(path, json));
  }

  /** Does not wait for the answer. */
  CompletableFuture<Got> postLater(String path, String json) {
    return http.sendAsync(posting(path, json), HttpResponse.BodyHandlers.ofString())
        .thenApply(Client::got);
  }

  private Got send(HttpRequest request) {
    try {
      return got(http.send(request, HttpResponse.BodyHandlers.ofString()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  private static Got got(HttpResponse<String> response) {
    return new Got(
        response.statusCode(),
        response.body(),
        response.headers().firstValue("Retry-After").orElse(""),
        response.headers().firstValue("Location").orElse(""));
  }
}

package io.github.tiderule.cases.difference.program;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A program that serves its pages on a free port, until this process ends.
 *
 * @param address without a slash at its end
 */
public record Served(HttpClient client, String address) {

  private static final Pattern ADDRESS = Pattern.compile("http://[0-9.:]+");
  private static final int BUSY = 503;
  private static final int TRIES = 600;
  private static final long PAUSE = 200;

  /** An answer: where it was in the end, and what it says. */
  public record Answer(String path, int status, String tag, String body) {}

  /**
   * Starts serving.
   *
   * @param data the directory of the record
   * @throws IOException if it does not begin within two minutes
   */
  public static Served of(LoadedProgram program, Path data) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Thread thread =
        new Thread(
            () -> {
              try {
                program.run("", out, err, "serve", "--port", "0", "--data", data.toString());
              } catch (ReflectiveOperationException e) {
                throw new IllegalStateException(e);
              }
            },
            "served");
    thread.setDaemon(true);
    thread.start();
    for (int i = 0; i < TRIES && thread.isAlive(); i++) {
      Matcher address = ADDRESS.matcher(out.toString(StandardCharsets.UTF_8));
      if (address.find()) {
        return new Served(
            HttpClient.newBuilder().followRedirects(HttpClient.Redirect.NORMAL).build(),
            address.group());
      }
      pause();
    }
    throw new IOException("it does not serve: " + err.toString(StandardCharsets.UTF_8));
  }

  /** Reads what is at a path. */
  public Answer get(String path) throws IOException {
    return send(path, HttpRequest.newBuilder().GET());
  }

  /** Sends a form without fields. */
  public Answer post(String path) throws IOException {
    return send(
        path,
        HttpRequest.newBuilder()
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(HttpRequest.BodyPublishers.noBody()));
  }

  /**
   * Replaces a document.
   *
   * @param tag of the version it replaces
   */
  public Answer put(String path, String tag, String json) throws IOException {
    return send(
        path,
        HttpRequest.newBuilder()
            .header("Content-Type", "application/json")
            .header("If-Match", tag)
            .PUT(HttpRequest.BodyPublishers.ofString(json)));
  }

  private Answer send(String path, HttpRequest.Builder builder) throws IOException {
    HttpRequest request = builder.uri(URI.create(address + path)).build();
    try {
      HttpResponse<String> response = null;
      for (int i = 0; i < TRIES && (response == null || response.statusCode() == BUSY); i++) {
        response = client.send(request, HttpResponse.BodyHandlers.ofString());
      }
      if (response == null) {
        throw new IOException("no answer at " + path);
      }
      return new Answer(
          response.uri().getPath(),
          response.statusCode(),
          response.headers().firstValue("ETag").orElse(""),
          response.body());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    }
  }

  private static void pause() throws IOException {
    try {
      Thread.sleep(PAUSE);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    }
  }
}

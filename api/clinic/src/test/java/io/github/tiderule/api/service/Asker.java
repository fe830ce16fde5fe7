package io.github.tiderule.api.service;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.is;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Asks a service on behalf of one person, and holds every answer to the document. */
final class Asker {

  private static final HttpClient HTTP = HttpClient.newHttpClient();
  private static final ObjectMapper JSON = new ObjectMapper();

  /** An answer. */
  record Got(int status, String body, Map<String, List<String>> headers) {

    JsonNode json() {
      try {
        return JSON.readTree(body);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    String text(String pointer) {
      return json().at(pointer).asText();
    }

    String header(String name) {
      List<String> values = headers.get(name.toLowerCase(Locale.ROOT));
      return values == null ? "" : values.get(0);
    }

    Got mustBe(int wanted) {
      assertThat(body, status, is(wanted));
      return this;
    }
  }

  private final String base;
  private final Map<String, String> headers;

  Asker(int port, Map<String, String> headers) {
    this("http://127.0.0.1:" + port, headers);
  }

  private Asker(String base, Map<String, String> headers) {
    this.base = base;
    this.headers = new LinkedHashMap<>(headers);
  }

  /** The same person, sending one more header. */
  Asker with(String name, String value) {
    Asker other = new Asker(base, headers);
    other.headers.put(name, value);
    return other;
  }

  Got get(String path) {
    return send("GET", path, null);
  }

  Got post(String path, String body) {
    return send("POST", path, body);
  }

  Got put(String path, String body) {
    return send("PUT", path, body);
  }

  Got delete(String path) {
    return send("DELETE", path, null);
  }

  Got send(String method, String path, @Nullable String body) {
    HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(base + path));
    Map<String, String> all = new LinkedHashMap<>();
    if (body != null) {
      all.put("Content-Type", "application/json");
    }
    all.putAll(headers);
    all.forEach(request::header);
    request.method(
        method,
        body == null
            ? HttpRequest.BodyPublishers.noBody()
            : HttpRequest.BodyPublishers.ofString(body));
    try {
      HttpResponse<String> response =
          HTTP.send(request.build(), HttpResponse.BodyHandlers.ofString());
      Got got = new Got(response.statusCode(), response.body(), response.headers().map());
      String plain = path.replaceFirst("\\?.*", "");
      assertThat(
          Contract.againstAnswer(
              Contract.matching(method, plain),
              got.status(),
              got.header("content-type"),
              got.body()),
          is(List.of()));
      return got;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }
}

package io.github.tiderule.api.page;

import io.github.tiderule.api.service.Desk;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.concurrent.atomic.AtomicInteger;

/** Somebody who asks for pages without a browser. */
record Visitor(Desk desk, String token) {

  private static final HttpClient HTTP = HttpClient.newHttpClient();
  private static final AtomicInteger FORMS = new AtomicInteger();

  /** Somebody nobody knows. */
  static Visitor stranger(Desk desk) {
    return new Visitor(desk, "");
  }

  HttpResponse<String> get(String path, String... headers) {
    HttpRequest.Builder request = request(path).GET();
    if (headers.length > 0) {
      request.headers(headers);
    }
    return send(request);
  }

  /** Sends a form that was not sent before. */
  HttpResponse<String> post(String path, String form) {
    return postAgain(path, "once=form-" + FORMS.incrementAndGet() + "&" + form);
  }

  /** Sends a form with the key it has. */
  HttpResponse<String> postAgain(String path, String form) {
    return send(
        request(path)
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(HttpRequest.BodyPublishers.ofString(form)));
  }

  /** Adds a female; her key. */
  String female(String name) {
    return location(post("/females/new", "name=" + name)).split("[/?]", -1)[2];
  }

  /** Adds a season of hers, first blood ten days ago; its key. */
  String season(String female) {
    return location(
            post(
                "/females/" + female + "/seasons/new",
                "zone=Europe/Vienna&on=2027-01-03&certainty=seen"))
        .replaceFirst("\\?.*", "")
        .replaceFirst(".*/", "");
  }

  /** Enters a value on a day of January. */
  void enter(String season, int day, String value) {
    location(
        post(
            "/seasons/" + season + "/enter/progesterone",
            "value=%s&unit=ng/mL&method=clia&laboratory=A&at=2027-01-%02dT08:00"
                .formatted(value, day)));
  }

  static String location(HttpResponse<String> got) {
    return got.headers()
        .firstValue("Location")
        .orElseThrow(() -> new AssertionError(got.statusCode() + got.body()));
  }

  private HttpRequest.Builder request(String path) {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + desk.service.port() + path))
            .header("Accept", "text/html");
    return token.isEmpty() ? request : request.header("Authorization", "Bearer " + token);
  }

  private static HttpResponse<String> send(HttpRequest.Builder request) {
    try {
      return HTTP.send(request.build(), HttpResponse.BodyHandlers.ofString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }
}

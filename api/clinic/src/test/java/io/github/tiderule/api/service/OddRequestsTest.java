package io.github.tiderule.api.service;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.startsWith;

import io.github.tiderule.api.access.Role;
import io.github.tiderule.api.service.http.PathPart;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Requests as no page of ours makes them, and ids as only a laboratory makes them. */
class OddRequestsTest {

  private static final List<String> IDS =
      List.of(
          "a/b", "a?b", "a#b", "a%b", "a%2Fb", "a\\b", "a{b}", "a b", "a+b", "a;b", "a&b=c", "ä");
  private static final Pattern LINK =
      Pattern.compile("(?:href|action)=\"(/[^\"]*/entries/[^\"]*)\"");

  private static String raw(Desk desk, String head, String body) {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), desk.service.port())) {
      String all =
          head
              + "\r\nHost: localhost:"
              + desk.service.port()
              + "\r\nConnection: close\r\n\r\n"
              + body;
      socket.getOutputStream().write(all.getBytes(StandardCharsets.ISO_8859_1));
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String cycle(Desk desk) {
    String female =
        desk.asker().post("/v1/females", "{\"name\": \"Juniper\"}").mustBe(201).text("/key");
    return desk.asker()
        .post(
            "/v1/females/" + female + "/cycles",
            "{\"zone\": \"Europe/Vienna\","
                + " \"firstBlood\": {\"on\": \"2027-01-03\", \"certainty\": \"seen\"}}")
        .mustBe(201)
        .text("/key");
  }

  @Test
  void anIdMayHoldAnySign() {
    try (Desk desk = Desk.open()) {
      String cycle = cycle(desk);
      for (String id : IDS) {
        String observation =
            "{\"id\": \""
                + id.replace("\\", "\\\\")
                + "\", \"kind\": \"sign\", \"at\": \"2027-01-13T08:00:00+01:00\","
                + " \"sign\": \"flags\", \"present\": true}";
        Asker.Got got =
            desk.asker().post("/v1/cycles/" + cycle + "/observations", observation).mustBe(201);
        String location = got.header("Location");
        assertThat(desk.asker().get(location).mustBe(200).text("/observation/id"), is(id));
      }
      String season = raw(desk, "GET /seasons/" + cycle + " HTTP/1.1", "");
      assertThat(season, startsWith("HTTP/1.1 200"));
      Set<String> links = new TreeSet<>();
      Matcher link = LINK.matcher(season);
      while (link.find()) {
        links.add(link.group(1).replace("&amp;", "&").replace("&#39;", "'"));
      }
      for (String id : IDS) {
        String path = "/seasons/" + cycle + "/entries/" + PathPart.of(id);
        assertThat(id, links.contains(path), is(true));
        String page = raw(desk, "GET " + path + " HTTP/1.1", "");
        assertThat(path + page, page, startsWith("HTTP/1.1 200"));
        assertThat(page, containsString("action=\"" + path));
      }
      assertThat(desk.faults, is(List.of()));
    }
  }

  @Test
  void whatCannotBeReadIsTheClientsFault() {
    try (Desk desk = Desk.open()) {
      String cycle = cycle(desk);
      String json = "\r\nContent-Type: application/json";
      List<String> answers = new ArrayList<>();
      String chunked = json + "\r\nTransfer-Encoding: chunked";
      answers.add(raw(desk, "POST /v1/advice HTTP/1.1" + chunked, "zz\r\n{}\r\n0\r\n\r\n"));
      answers.add(raw(desk, "POST /v1/advice HTTP/1.1" + chunked, "5\r\n{}\r\n0\r\n\r\n"));
      answers.add(raw(desk, "GET /v1/cycles/%00 HTTP/1.1", ""));
      answers.add(raw(desk, "GET /v1/cycles/" + cycle + "/observations/%00 HTTP/1.1", ""));
      answers.add(raw(desk, "GET /v1/cycles/" + cycle + "/observations/a%0ab HTTP/1.1", ""));
      answers.add(raw(desk, "GET /seasons/" + cycle + "/entries/%00 HTTP/1.1", ""));
      answers.add(raw(desk, "GET /v1/cycles/%c3%28 HTTP/1.1", ""));
      for (String answer : answers) {
        assertThat(answer, startsWith("HTTP/1.1 4"));
        boolean isPage = answer.contains("text/html");
        assertThat(answer, isPage || answer.contains("application/problem+json"), is(true));
      }
      assertThat(desk.faults, is(List.of()));
    }
  }

  @Test
  void aRequestThatEndsTooEarlyIsNoFaultOfOurs() throws Exception {
    try (Desk desk = Desk.open()) {
      try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), desk.service.port())) {
        String half =
            "POST /v1/advice HTTP/1.1\r\nHost: localhost:"
                + desk.service.port()
                + "\r\nContent-Type: application/json\r\nContent-Length: 100\r\n\r\n{";
        socket.getOutputStream().write(half.getBytes(StandardCharsets.US_ASCII));
        socket.shutdownOutput();
        socket.getInputStream().readAllBytes();
      }
      assertThat(desk.faults, is(List.of()));
    }
  }

  @Test
  void whereAnotherMethodIsMeantTheAnswerNamesIt() {
    try (Desk desk = Desk.open()) {
      String answer = raw(desk, "DELETE /v1/health HTTP/1.1", "");
      assertThat(answer, startsWith("HTTP/1.1 405"));
      assertThat(answer, containsString("Allow: GET"));
      String other = raw(desk, "PUT /v1/females HTTP/1.1\r\nContent-Length: 0", "");
      assertThat(other, startsWith("HTTP/1.1 405"));
      assertThat(other, containsString("GET"));
      assertThat(other, containsString("POST"));
      String page = raw(desk, "DELETE / HTTP/1.1\r\nAccept: text/html", "");
      assertThat(page, startsWith("HTTP/1.1 405"));
      assertThat(page, containsString("Allow: GET"));
    }
  }

  @Test
  void whereSomebodyComesFromNeedNotBeAPage() {
    try (Desk desk = Desk.withUsers()) {
      desk.add("anna", Role.KEEPER);
      for (String from : List.of("mailto:anna@example.org", "urn:x", "::", "%", "")) {
        String answer =
            raw(
                desk,
                "POST /females/new HTTP/1.1\r\nContent-Type: application/x-www-form-urlencoded"
                    + "\r\nContent-Length: 0\r\nReferer: "
                    + from,
                "");
        assertThat(from + answer, answer, startsWith("HTTP/1.1 303"));
        assertThat(answer, containsString("Location: /sign-in"));
      }
      assertThat(desk.faults, is(List.of()));
    }
  }
}

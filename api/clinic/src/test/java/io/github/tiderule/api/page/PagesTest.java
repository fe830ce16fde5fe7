package io.github.tiderule.api.page;

import static org.hamcrest.MatcherAssert.assertThat;
import static org.hamcrest.Matchers.anyOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;

import io.github.tiderule.api.access.CalendarAddresses;
import io.github.tiderule.api.access.People;
import io.github.tiderule.api.access.Person;
import io.github.tiderule.api.access.Role;
import io.github.tiderule.api.access.SeasonLinks;
import io.github.tiderule.api.page.form.Choices;
import io.github.tiderule.api.page.plan.Documents;
import io.github.tiderule.api.page.plan.Observed;
import io.github.tiderule.api.page.reasoning.Argument;
import io.github.tiderule.api.record.Change;
import io.github.tiderule.api.record.Review;
import io.github.tiderule.api.record.table.Page;
import io.github.tiderule.api.service.Desk;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.api.words.Texts;
import io.github.tiderule.api.words.Words;
import io.github.tiderule.engine.advice.Verdict;
import io.github.tiderule.rules.conclusion.Effect;
import io.github.tiderule.rules.fact.Certainty;
import io.github.tiderule.rules.fact.TreatmentKind;
import io.github.tiderule.rules.fact.Worded;
import io.github.tiderule.rules.fact.assay.Handling;
import io.github.tiderule.rules.fact.assay.Method;
import io.github.tiderule.rules.fact.assay.Specimen;
import io.github.tiderule.rules.fact.assay.Tube;
import io.github.tiderule.rules.fact.assay.Unit;
import io.github.tiderule.rules.fact.observation.Folds;
import io.github.tiderule.rules.fact.observation.Neutrophils;
import io.github.tiderule.rules.fact.observation.OvaryFinding;
import io.github.tiderule.rules.fact.observation.ScanFinding;
import io.github.tiderule.rules.fact.observation.SignKind;
import io.github.tiderule.rules.fact.semen.Semen;
import io.github.tiderule.rules.fact.semen.SemenColour;
import io.github.tiderule.rules.semen.Fraction;
import io.github.tiderule.rules.semen.FrozenUnit;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every route of the pages, as somebody asks who may not. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class PagesTest {

  private static final HttpClient HTTP = HttpClient.newHttpClient();
  private static final String SECRET = "Secret of anna";
  private static final Set<String> FOR_ALL =
      Set.of(
          "/sign-in",
          "/help",
          "/help/first-season",
          "/help/reasoning",
          "/help/programs",
          "/assets/{digest}/{name}",
          // who has the secret needs no account: CalendarPagesTest, LinkPagesTest
          "/calendar/{secret}/dates.ics",
          "/shared/{secret}",
          "/rules",
          "/rules/{rule}");

  private final Desk desk = Desk.withUsers();
  private String annas = "";
  private String berthas = "";
  private String female = "";
  private String season = "";
  private String advice = "";
  private String address = "";
  private String link = "";

  @BeforeAll
  void world() {
    annas = desk.token("anna", Role.KEEPER);
    berthas = desk.token("bertha", Role.KEEPER);
    String made =
        send("POST", "/females/new", annas, "once=a1&name=" + SECRET.replace(' ', '+'))
            .headers()
            .firstValue("Location")
            .orElseThrow();
    female = made.split("/", -1)[2];
    made =
        send(
                "POST",
                "/females/" + female + "/seasons/new",
                annas,
                "once=a2&zone=Europe/Vienna&on=2027-01-03&certainty=seen")
            .headers()
            .firstValue("Location")
            .orElseThrow();
    season = made.replaceFirst("\\?.*", "").replaceFirst(".*/", "");
    send(
        "POST",
        "/seasons/" + season + "/enter/progesterone",
        annas,
        "once=a3&value=2.1&unit=ng/mL&at=2027-01-12T08:00");
    advice =
        send("GET", "/seasons/" + season + "/reasoning", annas, "")
            .headers()
            .firstValue("Location")
            .orElseThrow()
            .replaceFirst(".*/", "");
    send("POST", "/calendars", annas, "once=a4&female=" + female);
    send("POST", "/seasons/" + season + "/links", annas, "once=a5&label=Vet");
    desk.store.read(
        ledger -> {
          Person anna = People.of(ledger).named("anna").orElseThrow();
          address = CalendarAddresses.of(ledger).of(anna).get(0).key();
          link = SeasonLinks.of(ledger).of(ledger.cycles().find(season).orElseThrow()).get(0).key();
          return true;
        });
  }

  @AfterAll
  void close() {
    desk.close();
  }

  static List<Route> routes() {
    return Pages.site().routes();
  }

  private String path(Route route) {
    return route
        .path()
        .replace("{female}", female)
        .replace("{cycle}", season)
        .replace("{advice}", advice)
        .replace("{address}", address)
        .replace("{link}", link)
        .replace("{secret}", "x".repeat(43))
        .replace("{rule}", "FND-003")
        .replace("{kind}", "lh")
        .replace("{digest}/{name}", "0/page.css")
        .replace("{observation}", "p1");
  }

  private HttpResponse<String> send(String method, String path, String token, String form) {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + desk.service.port() + path));
    if (!token.isEmpty()) {
      request.header("Authorization", "Bearer " + token);
    }
    request.header("Accept", "text/html");
    if (method.equals("GET")) {
      request.GET();
    } else {
      request
          .header("Content-Type", "application/x-www-form-urlencoded")
          .POST(HttpRequest.BodyPublishers.ofString(form));
    }
    try {
      return HTTP.send(request.build(), HttpResponse.BodyHandlers.ofString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  private String form(Route route) {
    return "once="
        + route.path().hashCode()
        + "&was=1&reason=x&unit=ng/mL&name=x&clinic=yes"
        + "&zone=UTC&certainty=unknown&result=positive&at=2027-01-12T08:00&value=9&verdict=agreed";
  }

  @ParameterizedTest
  @MethodSource("routes")
  void whoIsNotSignedInIsAskedToBe(Route route) {
    if (FOR_ALL.contains(route.path())) {
      return;
    }
    HttpResponse<String> got = send(route.method().name(), path(route), "", form(route));
    assertThat(route.toString(), got.statusCode(), is(303));
    assertThat(got.headers().firstValue("Location").orElseThrow(), startsWith("/sign-in"));
    assertThat(got.body(), not(containsString(SECRET)));
  }

  @ParameterizedTest
  @MethodSource("routes")
  void anotherKeeperFindsNothingOfHers(Route route) {
    int before = entries();
    HttpResponse<String> got = send(route.method().name(), path(route), berthas, form(route));
    assertThat(route.toString(), got.body(), not(containsString(SECRET)));
    if (List.of("{female}", "{cycle}", "{advice}", "{address}", "{link}").stream()
        .anyMatch(route.path()::contains)) {
      assertThat(route.toString(), got.statusCode(), is(404));
    }
    assertThat(route.toString(), entries(), is(before));
    assertThat(route.isPage(), is(true));
  }

  private int entries() {
    return desk.store
        .read(ledger -> ledger.entries().all(season, Page.Wanted.FIRST))
        .items()
        .size();
  }

  @ParameterizedTest
  @MethodSource("routes")
  void everyAnswerCarriesThePolicyAndNoPageAStyleOrScriptOfItsOwn(Route route) {
    HttpResponse<String> got = send("GET", path(route), annas, "");
    assertThat(
        got.headers().firstValue("Content-Security-Policy").orElseThrow(),
        startsWith("default-src 'none'; script-src 'self'; style-src 'self'"));
    assertThat(got.body(), not(containsString(" style=\"")));
    assertThat(got.body(), not(containsString("<style")));
    assertThat(
        got.body().replaceAll("<script src=\"/assets/[0-9a-f]+/page.js\" defer>", ""),
        not(containsString("<script")));
    assertThat(got.body(), not(containsString("https://")));
  }

  @Test
  void aReaderWritesNothing() {
    String reader = desk.token("rita", Role.READER);
    for (Route route : routes()) {
      if (route.need() == Route.Need.WRITER || route.need() == Route.Need.VET) {
        HttpResponse<String> got = send(route.method().name(), path(route), reader, form(route));
        assertThat(route.toString(), got.statusCode(), anyOf(is(403), is(404)));
      }
    }
  }

  @Test
  void aKeeperSignsNothingWhereVetsSignIn() {
    HttpResponse<String> got =
        send(
            "POST",
            "/advice/" + advice,
            annas,
            "once=k1&vet=Anna&verdict=disagreed&note=I+know+better");
    assertThat(got.statusCode(), is(403));
    assertThat(
        desk.store.read(ledger -> ledger.advices().reviews(advice, Page.Wanted.FIRST)).items(),
        is(empty()));
  }

  @Test
  void aFormWithoutItsSessionsTokenChangesNothing() {
    HttpResponse<String> begun =
        send("POST", "/sign-in", "", "name=anna&password=" + Desk.PASSWORD.replace(' ', '+'));
    String cookie = begun.headers().firstValue("Set-Cookie").orElseThrow().replaceFirst(";.*", "");
    HttpRequest request =
        HttpRequest.newBuilder(
                URI.create("http://127.0.0.1:" + desk.service.port() + "/females/new"))
            .header("Cookie", cookie)
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(HttpRequest.BodyPublishers.ofString("once=x&name=Forged"))
            .build();
    try {
      HttpResponse<String> got = HTTP.send(request, HttpResponse.BodyHandlers.ofString());
      assertThat(got.statusCode(), is(403));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
    assertThat(send("GET", "/", annas, "").body(), not(containsString("Forged")));
  }

  @Test
  void textIsEscaped() {
    String token = desk.token("carla", Role.KEEPER);
    send("POST", "/females/new", token, "once=c1&name=%3Cscript%3Ealert(1)%3C/script%3E");
    String home = send("GET", "/", token, "").body();
    assertThat(home, containsString("&lt;script&gt;alert(1)"));
    assertThat(home, not(containsString("<script>alert")));
  }

  /** It is refused, and comes back in its field for the person to see what is in it. */
  @Test
  void whatIsTypedCannotActWhenItComesBack() {
    String token = desk.token("carla", Role.KEEPER);
    String form = "once=c2&name=Ju%E2%80%AEno%1B%5B2J";
    HttpResponse<String> got = send("POST", "/females/new", token, form);
    assertThat(got.body(), got.statusCode(), is(422));
    assertThat(got.body(), containsString("value=\"Ju&lt;U+202E&gt;no&lt;U+001B&gt;[2J\""));
    assertThat(got.body(), not(containsString("\u202E")));
    assertThat(got.body(), not(containsString("\u001b")));
  }

  @Test
  void everyTextIsUsedAndEveryTextUsedIsThere() throws IOException {
    Texts texts = Texts.ofPages(Locale.ROOT);
    Set<String> used = new TreeSet<>();
    StringBuilder sources = new StringBuilder();
    for (String directory : List.of("src/main/jte", "src/main/java/io/github/tiderule/api/page")) {
      try (Stream<Path> files = Files.walk(Path.of(directory))) {
        for (Path file : files.filter(Files::isRegularFile).toList()) {
          sources.append(Files.readString(file)).append('\n');
        }
      }
    }
    Matcher said =
        Pattern.compile("(?:say|titled)\\(\\s*\"([a-z][\\w.-]*\\w)\"[,)]").matcher(sources);
    while (said.find()) {
      used.add(said.group(1));
      assertThat(said.group(1), texts.has(said.group(1)), is(true));
    }
    assertThat(used.size() > 100, is(true));
    List<String> unused =
        texts.keys().stream()
            .filter(key -> !used.contains(key))
            .filter(key -> !sources.toString().contains('"' + key + '"'))
            .filter(
                key -> {
                  int dot = key.indexOf('.');
                  String family = dot < 0 ? key : key.substring(0, dot);
                  return !sources.toString().contains('"' + family + ".\"")
                      && !sources.toString().contains("word(\"" + family + "\",")
                      && !sources.toString().contains("prefix = \"" + family + '"')
                      && !sources
                          .toString()
                          .contains("count(\"" + key.replaceFirst("\\.(one|many)$", ""));
                })
            .toList();
    assertThat(unused.toString(), unused, hasSize(0));
  }

  /** What stands on the wire and is shown, by the name of its texts. */
  private static Map<String, List<String>> words() {
    return Map.ofEntries(
        Map.entry("kind", kinds()),
        Map.entry("enter", kinds()),
        Map.entry("unit", words(Unit.values(), Choices.NOT_STATED)),
        Map.entry("method", words(Method.values())),
        Map.entry("specimen", words(Specimen.values())),
        Map.entry("tube", words(Tube.values())),
        Map.entry("handling", words(Handling.values())),
        Map.entry("result", Choices.LH),
        Map.entry("neutrophils", words(Neutrophils.values())),
        Map.entry("folds", words(Folds.values())),
        Map.entry("sign", words(SignKind.values())),
        Map.entry("present", Choices.PRESENT),
        Map.entry("skeleton", Choices.SKELETON),
        Map.entry(
            "finding",
            Stream.of(words(OvaryFinding.values()), words(ScanFinding.values()))
                .flatMap(List::stream)
                .toList()),
        Map.entry("semen", words(Semen.values())),
        Map.entry("route", words(io.github.tiderule.rules.fact.semen.Route.values())),
        Map.entry("certainty", words(Certainty.values())),
        Map.entry("treatment", words(TreatmentKind.values())),
        Map.entry("fraction", words(Fraction.values())),
        Map.entry("appearance", words(SemenColour.values())),
        Map.entry("frozen", words(FrozenUnit.values())),
        Map.entry("pregnant", Choices.PREGNANT),
        Map.entry("weekday", Choices.WEEKDAYS),
        Map.entry("history", words(Change.values())),
        Map.entry("verdict", words(Verdict.values())),
        Map.entry(
            "effect",
            Arrays.stream(Effect.values())
                .map(one -> one.name().toLowerCase(Locale.ROOT))
                .toList()),
        Map.entry("use", List.of("taken", "held", "discounted", "set-aside")),
        Map.entry("stage", Argument.STAGES),
        Map.entry("asked", List.of("spoke", "silent", "not-asked", "unknown")));
  }

  /** Every kind of observation a cycle file may hold. */
  private static List<String> kinds() {
    try {
      String schema =
          Files.readString(
              Path.of(
                  "../format/src/main/resources/io/github/tiderule/schema/cycle-1.schema.json"));
      List<String> kinds =
          Pattern.compile("\"kind\": \\{\\s*\"const\": \"([a-z-]+)\"")
              .matcher(schema)
              .results()
              .map(found -> found.group(1))
              // a test of both dogs before the season, which is no observation of hers
              .filter(kind -> !kind.equals("brucella"))
              .toList();
      assertThat(kinds.size(), is(11));
      return kinds;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<String> words(Worded[] all, String... more) {
    return Stream.concat(Arrays.stream(all).map(Worded::word), Arrays.stream(more)).toList();
  }

  @Test
  void everyWordOfTheWireHasAText() {
    Texts texts = Texts.ofPages(Locale.ROOT);
    List<String> missing = new ArrayList<>();
    words()
        .forEach(
            (family, all) ->
                all.stream()
                    .map(word -> family + "." + word)
                    .filter(key -> !texts.has(key))
                    .forEach(missing::add));
    for (Review.Verdict verdict : Review.Verdict.values()) {
      if (!texts.has("sign." + verdict.word())) {
        missing.add("sign." + verdict.word());
      }
    }
    for (String stage : Argument.STAGES) {
      if (!texts.has("stage." + stage + ".hint")) {
        missing.add("stage." + stage + ".hint");
      }
    }
    assertThat(missing, is(empty()));
  }

  @Test
  void aWordWithoutATextIsShownAsItStands() {
    Texts texts = Texts.ofPages(Locale.ROOT);
    assertThat(texts.word("sign", "waters-broken"), is("Waters broken"));
    assertThat(texts.word("sign", "tail-held-high"), is("tail held high"));
    assertThat(
        Observed.words(
            Documents.of(
                "{\"id\": \"s1\", \"kind\": \"kit-strip\", \"at\": \"2027-01-08T08:00:00Z\","
                    + " \"result\": \"too-faint\"}"),
            texts,
            Words.of(Locale.UK)),
        is("kit strip, too faint"));
  }

  @Test
  void datesFollowWhatTheBrowserSays() {
    OffsetDateTime at = OffsetDateTime.parse("2027-03-04T14:30:00+01:00");
    for (String header : List.of("en-GB", "", "%", "en")) {
      assertThat(Words.ofHeader(header).moment(at), is("Thu 4 Mar 2027, 14:30"));
    }
    assertThat(Words.ofHeader("en-US,en;q=0.9").moment(at), is("Thu, Mar 4, 2027, 2:30 PM"));
    assertThat(Words.ofHeader("de-AT").number(1.8), is("1,8"));
  }
}

package io.github.tiderule.api.service;

import io.github.tiderule.api.report.rulebook.RulebookHtml;
import io.github.tiderule.api.report.rulebook.RulebookMarkdown;
import io.github.tiderule.api.service.http.Answer;
import io.github.tiderule.api.service.http.Call;
import io.github.tiderule.api.service.http.Refusal;
import io.github.tiderule.api.service.http.Route;
import io.github.tiderule.format.json.Document;
import io.github.tiderule.format.json.Layout;
import io.github.tiderule.format.json.RulebookJson;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;

/** What there is to read: the rule book, the contract, the schemas, how the service is. */
final class BookRoutes {

  static final String CONTRACT = "/io/github/tiderule/api/service/openapi.yaml";

  private static final String SCHEMAS = "/io/github/tiderule/schema/";
  static final String HEALTH = "/v1/health";

  /** Whoever asks how the service is every second does not have the whole record read each time. */
  private static final Duration LOOK_THROUGH = Duration.ofMinutes(1);

  private static final String HTML = "text/html; charset=utf-8";
  private static final List<String> SCHEMA_NAMES =
      List.of(
          "cycle-1.schema.json",
          "advice-1.schema.json",
          "problems-1.schema.json",
          "changes-1.schema.json");

  private final Metrics metrics;

  BookRoutes(Metrics metrics) {
    this.metrics = metrics;
  }

  List<Route> all() {
    return List.of(
        new Route(Route.Method.GET, HEALTH, Route.Need.NOBODY, BookRoutes::health),
        new Route(Route.Method.GET, "/v1/metrics", Route.Need.ANYBODY, this::metrics),
        new Route(Route.Method.GET, "/v1/rulebook", Route.Need.NOBODY, BookRoutes::rulebook),
        new Route(Route.Method.GET, "/v1/openapi.yaml", Route.Need.NOBODY, BookRoutes::contract),
        new Route(Route.Method.GET, "/v1/openapi.json", Route.Need.NOBODY, BookRoutes::one),
        new Route(Route.Method.GET, "/v1/openapi", Route.Need.NOBODY, BookRoutes::page),
        new Route(Route.Method.GET, "/v1/schemas/{schema}", Route.Need.NOBODY, BookRoutes::schema));
  }

  private static Answer health(Call call) {
    call.environment().store().mustBeSound(LOOK_THROUGH);
    call.read(ledger -> ledger.females().find(""));
    return Answer.json(
        Document.text(
            Layout.ONE_LINE,
            json ->
                json.text("status", "ok")
                    .text("rules", call.environment().rules().get().fingerprint())));
  }

  private Answer metrics(Call call) {
    return Answer.text(Metrics.CONTENT_TYPE, metrics.text());
  }

  private static Answer rulebook(Call call) {
    String accept = call.header("Accept").orElse("");
    if (accept.contains("text/html")) {
      call.mayStyleItself();
      return Answer.text(HTML, RulebookHtml.text(call.environment().rules().get()));
    }
    if (accept.contains("text/markdown")) {
      return Answer.text(
          "text/markdown; charset=utf-8", RulebookMarkdown.text(call.environment().rules().get()));
    }
    return Answer.json(RulebookJson.text(call.environment().rules().get()));
  }

  private static Answer contract(Call call) {
    return Answer.text("application/yaml", resource(CONTRACT));
  }

  private static Answer one(Call call) {
    return Answer.json(One.TEXT);
  }

  /** Made when it is first asked for. */
  private static final class One {
    static final String TEXT =
        OneContract.text(resource(CONTRACT), SCHEMA_NAMES, name -> resource(SCHEMAS + name));
  }

  private static Answer page(Call call) {
    call.mayStyleItself();
    return Answer.text(HTML, ContractPage.text(resource(CONTRACT)));
  }

  private static Answer schema(Call call) {
    String name = call.part("schema");
    if (!SCHEMA_NAMES.contains(name)) {
      throw Refusal.notFound();
    }
    return Answer.text("application/schema+json", resource(SCHEMAS + name));
  }

  private static String resource(String name) {
    try (InputStream in = BookRoutes.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks " + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

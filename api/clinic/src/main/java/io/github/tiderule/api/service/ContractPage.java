package io.github.tiderule.api.service;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.Dump;
import org.snakeyaml.engine.v2.api.DumpSettings;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.common.FlowStyle;

/** The OpenAPI document as one page that needs no other file. */
final class ContractPage {

  private static final String STYLE =
      """
      :root { color-scheme: light dark; }
      body { font: 1rem/1.5 system-ui, sans-serif; max-width: 52rem; margin: 2rem auto;
        padding: 0 1rem; }
      h1, h2, h3 { line-height: 1.2; }
      h2 { border-bottom: 1px solid; margin-top: 3rem; }
      section { margin: 2rem 0; }
      h3 code { font-weight: bold; }
      dt { font-weight: bold; }
      dd { margin: 0 0 .4rem 1.5rem; }
      pre { background: #8882; padding: .6rem; overflow-x: auto; font-size: .85rem; }
      code { font: .9em ui-monospace, monospace; overflow-wrap: anywhere; }
      """;

  private final StringBuilder html = new StringBuilder();
  private final Map<?, ?> contract;

  private ContractPage(Map<?, ?> contract) {
    this.contract = contract;
  }

  /** The page. */
  static String text(String yaml) {
    Object read = new Load(LoadSettings.builder().build()).loadFromString(yaml);
    return new ContractPage(map(read)).text();
  }

  private static Map<?, ?> map(@Nullable Object value) {
    return value instanceof Map<?, ?> map ? map : Map.of();
  }

  private static List<?> list(@Nullable Object value) {
    return value instanceof List<?> list ? list : List.of();
  }

  private static String words(@Nullable Object value) {
    return Objects.toString(value, "").strip();
  }

  private Map<?, ?> resolved(@Nullable Object value) {
    Map<?, ?> map = map(value);
    if (!(map.get("$ref") instanceof String reference) || !reference.startsWith("#/")) {
      return map;
    }
    Map<?, ?> at = contract;
    for (String step : reference.substring(2).split("/", -1)) {
      at = map(at.get(step));
    }
    return at;
  }

  private String text() {
    Map<?, ?> info = map(contract.get("info"));
    html.append("<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
        .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
        .append("<title>")
        .append(escaped(words(info.get("title"))))
        .append("</title>\n<style>\n")
        .append(STYLE)
        .append("</style>\n</head>\n<body>\n<h1>")
        .append(escaped(words(info.get("title"))))
        .append("</h1>\n");
    paragraphs(words(info.get("description")));
    html.append("<p>The same for programs: <a href=\"/v1/openapi.yaml\">openapi.yaml</a></p>\n");
    for (Object tag : list(contract.get("tags"))) {
      group(words(map(tag).get("name")), words(map(tag).get("description")));
    }
    return html.append("</body>\n</html>\n").toString();
  }

  private void group(String name, String description) {
    html.append("<h2>").append(escaped(name)).append("</h2>\n");
    paragraphs(description);
    map(contract.get("paths"))
        .forEach(
            (path, item) ->
                map(item)
                    .forEach(
                        (method, operation) -> {
                          if (list(map(operation).get("tags")).contains(name)) {
                            operation(words(method), words(path), map(item), map(operation));
                          }
                        }));
  }

  private void operation(String method, String path, Map<?, ?> item, Map<?, ?> operation) {
    html.append("<section>\n<h3><code>")
        .append(escaped(method.toUpperCase(Locale.ROOT) + " " + path))
        .append("</code></h3>\n");
    paragraphs(words(operation.get("summary")));
    paragraphs(words(operation.get("description")));
    html.append("<dl>\n");
    list(item.get("parameters")).forEach(this::parameter);
    list(operation.get("parameters")).forEach(this::parameter);
    map(operation.get("responses"))
        .forEach(
            (status, response) ->
                entry(words(status), words(resolved(response).get("description"))));
    html.append("</dl>\n");
    map(resolved(operation.get("requestBody")).get("content"))
        .forEach((type, content) -> examples("Sent", map(content)));
    map(operation.get("responses"))
        .forEach(
            (status, response) ->
                map(resolved(response).get("content"))
                    .forEach((type, content) -> examples("Answer " + words(status), map(content))));
    html.append("</section>\n");
  }

  private void parameter(Object given) {
    Map<?, ?> parameter = resolved(given);
    entry(
        words(parameter.get("name")) + " (" + words(parameter.get("in")) + ")",
        words(parameter.get("description")));
  }

  private void entry(String term, String meaning) {
    html.append("<dt>")
        .append(escaped(term))
        .append("</dt><dd>")
        .append(escaped(meaning))
        .append("</dd>\n");
  }

  private void examples(String title, Map<?, ?> content) {
    map(content.get("examples"))
        .forEach(
            (name, example) -> {
              Object value = resolved(example).get("value");
              html.append("<p>")
                  .append(escaped(title))
                  .append(", for example ")
                  .append(escaped(words(name)))
                  .append(":</p>\n<pre>")
                  .append(escaped(value instanceof String text ? text : yaml(value)))
                  .append("</pre>\n");
            });
  }

  private static String yaml(@Nullable Object value) {
    DumpSettings settings =
        DumpSettings.builder().setDefaultFlowStyle(FlowStyle.BLOCK).setWidth(90).build();
    return new Dump(settings).dumpToString(value).strip();
  }

  private void paragraphs(String text) {
    for (String paragraph : text.split("\n\\s*\n", -1)) {
      if (!paragraph.isBlank()) {
        html.append("<p>").append(escaped(paragraph.strip())).append("</p>\n");
      }
    }
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }
}

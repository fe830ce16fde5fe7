package io.github.tiderule.api.command;

import io.github.tiderule.api.command.stream.Engine;
import io.github.tiderule.api.command.stream.ExitStatus;
import io.github.tiderule.api.command.stream.Output;
import io.github.tiderule.api.command.stream.Streams;
import io.github.tiderule.api.report.rulebook.RulebookHtml;
import io.github.tiderule.api.report.rulebook.RulebookMarkdown;
import io.github.tiderule.api.report.rulebook.RulebookText;
import io.github.tiderule.format.json.RulebookJson;
import io.github.tiderule.rules.RuleBase;
import java.io.IOException;
import java.util.List;
import java.util.function.Supplier;

/** {@code rulebook}: every rule, parameter and source. */
final class RulebookCommand {

  static final String MARKDOWN = "markdown";
  static final String HTML = "html";
  static final String JSON = "json";
  static final String TEXT = "text";
  static final List<String> FORMATS = List.of(MARKDOWN, HTML, JSON, TEXT);

  private final Streams streams;
  private final Supplier<Engine> engine;

  RulebookCommand(Streams streams, Supplier<Engine> engine) {
    this.streams = streams;
    this.engine = engine;
  }

  /**
   * @param format one of {@link #FORMATS}
   * @throws IOException if it cannot be written
   */
  int run(String format) throws IOException {
    RuleBase rules = engine.get().rules();
    String text =
        switch (format) {
          case HTML -> RulebookHtml.text(rules);
          case JSON -> RulebookJson.text(rules);
          case TEXT -> RulebookText.text(rules);
          default -> RulebookMarkdown.text(rules);
        };
    new Output(streams.out()).print(text);
    return ExitStatus.DONE;
  }
}
